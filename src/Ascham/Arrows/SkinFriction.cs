namespace Ascham.Arrows;

using Ascham.Numerics;

/// <summary>Friction of air along smooth surfaces and the suction behind a blunt end: coefficients by published formulas.</summary>
static class SkinFriction
{
    // Natural to common logarithm.
    const double Common = 0.43429448190325182;

    /// <summary>Laminar flat plate, per wetted area: 1.328/sqrt(Re). H. Blasius, Z. Math. Phys. 56 (1908) 1-37.</summary>
    internal static T Laminar<T>(T reynolds)
        where T : struct, ITranscendental<T>
        => T.Of(1.328) / T.SquareRoot(reynolds);

    /// <summary>How much more a thin cylinder in axial laminar flow has, from the curvature kappa = (2/a) sqrt(nu L/V), 0 to 1.</summary>
    /// <remarks>
    /// Fit to a finite-difference solution of the axisymmetric boundary layer, within 0.2 % (tests/authorities/skin-friction-cylinder-derived.csv);
    /// its first coefficient agrees with the series of R. A. Seban and R. Bond, J. Aeronaut. Sci. 18 (1951) 671 (from memory).
    /// </remarks>
    internal static T Curvature<T>(T kappa)
        where T : struct, ITranscendental<T>
        => T.Of(1) + kappa * (T.Of(0.5227) + kappa * (T.Of(-0.148) + 0.056 * kappa));

    /// <summary>Turbulent flat plate, per wetted area: 0.074 Re^(-1/5), for Re 5e5 to 1e7, from ln Re. L. Prandtl (1927).</summary>
    internal static T FifthRoot<T>(T logReynolds)
        where T : struct, ITranscendental<T>
        => 0.074 * T.Exp(-0.2 * logReynolds);

    /// <summary>Turbulent flat plate, per wetted area: 0.455/(log10 Re)^2.58, to Re 1e9, from ln Re. L. Prandtl, H. Schlichting (1932).</summary>
    internal static T PrandtlSchlichting<T>(T logReynolds)
        where T : struct, ITranscendental<T>
        => 0.455 * T.Exp(-2.58 * T.Log(Common * logReynolds));

    /// <summary>What the curvature of a thin cylinder adds to turbulent friction, per wetted area: 0.015 (L/a)^0.4 Re^(-1/3), from the logarithms of L/a and Re.</summary>
    /// <remarks>
    /// The part with L/a of 0.0015 + (0.30 + 0.015 (L/a)^0.4) Re^(-1/3): F. M. White, J. Basic Eng. 94 (1972) 200-206 (coefficients from memory). It is the
    /// largest of three estimates and meant for an upper bound: a momentum integral with the logarithmic law along a cylinder gives two thirds of it
    /// (SkinFrictionTests, derived), S. F. Hoerner's 0.0016 (L/d) Re^(-2/5) half (from memory).
    /// </remarks>
    internal static T TurbulentCurvature<T>(double logLengthPerRadius, T logReynolds)
        where T : struct, ITranscendental<T>
        => 0.015 * T.Exp(T.Of(0.4 * logLengthPerRadius) - 1 / 3.0 * logReynolds);

    /// <summary>Suction behind a blunt tail in the wake of a turbulent layer: 0.029/sqrt(drag coefficient of the body ahead). S. F. Hoerner; Gregorek, TR-11 (1970), eq. 9.</summary>
    internal static T Base<T>(T forebody)
        where T : struct, ITranscendental<T>
        => T.Of(0.029) / T.SquareRoot(forebody);

    /// <summary>Friction of both faces of a thin blade, per planform area: 2 Cf (1 + 2 t/c). Gregorek, TR-11 (1970).</summary>
    internal static double BladePerFriction(double thicknessRatio) => 2 * (1 + 2 * thicknessRatio);
}
