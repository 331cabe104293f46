namespace Ascham.Bows;

using Ascham.Numerics;
using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;

public sealed partial class ArrowSpeeds
{
    const double Grain = 64.79891e-6; // kg, exact

    /// <summary>Virtual mass and launch energy of the bow: ½ (m + K) v² is the same for every arrow.</summary>
    /// <remarks>
    /// <para><b>Model.</b> 1/v² = (m + K)/(2E) is a line in m; K is its intercept over its slope (P. E. Klopsteg, Am. J. Phys. 11 (1943), from memory).
    /// Weighted least squares; the spread from shot to shot is pooled over the arrows. The interval of K is that of a ratio
    /// (E. C. Fieller, J. R. Statist. Soc. B 16 (1954) 175-185, from memory), with Student's t of the pooled spread.</para>
    /// <para>The chronograph's own scale cancels in K and enters E twice. Masses are taken as exact: 0.5 gr wrong on one arrow is as much as 0.14 ft/s.</para>
    /// <para><b>Left out.</b> K grows slowly with arrow mass; the fit then gives a K somewhat small, and says when the speeds show it.</para>
    /// </remarks>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <param name="scaleSd">Relative standard deviation of the chronograph as a whole, common to all readings; 0 to 10 %.</param>
    /// <returns>The fit, with warnings in words.</returns>
    /// <exception cref="VirtualMassUnknownException">The speeds imply a negative virtual mass, or do not bound it at this level.</exception>
    /// <exception cref="InvalidOperationException">No arrow's shots differ at all: how sure the speeds are cannot be told.</exception>
    public VirtualMassFit FitVirtualMass(double level, Ratio scaleSd)
    {
        Require.Level(level);
        double scale = Require.InRange(scaleSd.DecimalFractions, 0, 0.1, "", nameof(scaleSd));
        double freedom = arrows.Sum(a => a.Shots - 1);
        double shot = arrows.Sum(a => (a.Shots - 1) * Math.Pow(a.ShotSd.MetersPerSecond, 2)) / freedom;
        if (!(shot > 0))
        {
            throw new InvalidOperationException("No arrow's shots differ at all, so how sure the speeds are cannot be told. Give the spread from shot to shot; a display that shows whole numbers hides it.");
        }

        double[] mass = [.. arrows.Select(a => a.Mass.Kilograms)], speed = [.. arrows.Select(a => a.Speed.MetersPerSecond)];
        var line = GeneralisedLeastSquares.Fit(
            Matrix<double>.Build.Dense(mass.Length, 2, (i, j) => j == 0 ? 1 : mass[i]),
            Vector<double>.Build.Dense(mass.Length, i => Math.Pow(speed[i], -2)),
            Matrix<double>.Build.Diagonal(mass.Length, mass.Length, i => 4 * shot / arrows[i].Shots * Math.Pow(speed[i], -6)));
        double t = Quantiles.StudentT(freedom, level), intercept = line.Coefficients[0], slope = line.Coefficients[1], ratio = intercept / slope;
        var bounds = Fieller(intercept, slope, line.Covariance, t);
        if (!(ratio > 0) || bounds is not { } k)
        {
            throw Unknown(slope, ratio, bounds?.High);
        }

        double error = Math.Sqrt(line.Covariance[0, 0] - 2 * ratio * line.Covariance[0, 1] + ratio * ratio * line.Covariance[1, 1]) / slope;
        double relative = Math.Sqrt(line.Covariance[1, 1] / (slope * slope) + 4 * scale * scale);
        double? fits = line.FreeObservations == 0 ? null : 1 - FisherSnedecor.CDF(line.FreeObservations, freedom, line.ChiSquare / line.FreeObservations);
        int worst = Enumerable.Range(0, mass.Length).MaxBy(i => Math.Abs(line.Residuals[i]) * Math.Pow(speed[i], 3) * Math.Sqrt(arrows[i].Shots));
        int shots = arrows.Sum(a => a.Shots);
        return new()
        {
            VirtualMass = new Estimate<double>(ratio, error, Math.Max(0, k.Low), k.High, level, shots, "line of 1/v² against arrow mass, Fieller's interval").Map(x => Mass.FromKilograms(x)),
            LaunchEnergy = Bounds.Logarithmic(0.5 / slope, relative, t, level, shots, "slope of 1/v² against arrow mass").Map(x => Energy.FromJoules(x)),
            FitProbability = fits,
            Warnings = [.. Warnings(ratio, k.Low, k.High, fits, arrows[worst])],
            Line = new(intercept, slope, line.Covariance[0, 0], line.Covariance[0, 1], line.Covariance[1, 1], t, level, scale, mass.Min(), mass.Max(), shots),
        };
    }

    /// <summary>Where (a - K b)² is at most t² its variance; nothing when the slope is not told from zero.</summary>
    static (double Low, double High)? Fieller(double a, double b, Matrix<double> v, double t)
    {
        double square = b * b - t * t * v[1, 1], linear = a * b - t * t * v[0, 1], constant = a * a - t * t * v[0, 0];
        double root = Math.Sqrt(Math.Max(0, linear * linear - square * constant));
        return square > 0 ? ((linear - root) / square, (linear + root) / square) : null;
    }

    IEnumerable<string> Warnings(double ratio, double low, double high, double? fits, ChronographedArrow worst)
    {
        const double Poor = 0.25, Span = 150, Misfit = 0.01; // Span in grains: common practice, no source
        double half = (high - Math.Max(0, low)) / (2 * ratio), span = (arrows.Max(a => a.Mass) - arrows.Min(a => a.Mass)).Grains;
        if (half > Poor)
        {
            yield return Text($"Ill-conditioned: the virtual mass is known to ±{100 * half:0} % only. One foot per second in one arrow moves it by about {PerFootPerSecond(ratio):0} gr. Use four masses or more over {Span:0} gr or more (now {arrows.Length} over {span:0} gr), ten shots each.");
        }

        if (arrows.Length == 2)
        {
            yield return "Two masses leave nothing to check the model with: a wrong weight or speed would go unseen. Add a third.";
        }

        if (fits < Misfit)
        {
            yield return Text($"The speeds leave the line by more than shots scatter; most the arrow of {worst.Mass.Grains:0.#} gr. Weigh and shoot it again; if it stays, the virtual mass of this bow changes with the arrow and one number is too simple.");
        }
    }

    // By the two outermost masses: dK/dv2 = 2 m' v2/(v1² - v2²) with m' = m + K of the heavier.
    double PerFootPerSecond(double ratio)
    {
        ChronographedArrow light = arrows.MinBy(a => a.Mass.Kilograms)!, heavy = arrows.MaxBy(a => a.Mass.Kilograms)!;
        double v1 = light.Speed.FeetPerSecond, v2 = heavy.Speed.FeetPerSecond;
        return 2 * v2 * (heavy.Mass.Grains + Mass.FromKilograms(ratio).Grains) / Math.Abs(v1 * v1 - v2 * v2);
    }

    VirtualMassUnknownException Unknown(double slope, double ratio, double? high)
    {
        ChronographedArrow light = arrows.MinBy(a => a.Mass.Kilograms)!, heavy = arrows.MaxBy(a => a.Mass.Kilograms)!;
        double grains = ratio / Grain; // not a Mass: it may be infinite
        string pair = Text($"the arrow of {light.Mass.Grains:0.#} gr at {light.Speed.FeetPerSecond:0.0} ft/s and the one of {heavy.Mass.Grains:0.#} gr at {heavy.Speed.FeetPerSecond:0.0} ft/s");
        string problem = slope <= 0 ? "These speeds do not fall with arrow mass, which no bow does"
            : ratio > 0 ? Text($"These speeds do not bound the virtual mass: {grains:0} gr fits best, but any larger one is within the errors")
            : Text($"These speeds imply a negative virtual mass ({grains:0} gr): the lighter arrows carry more energy than the heavier, which no bow gives");
        string chance = slope > 0 && ratio <= 0 && high > 0 ? Text($" Within the errors it may still be up to {high.Value / Grain:0} gr.") : "";
        return new($"{problem}.{chance} Measure again {pair}: weigh them, set the chronograph at one place for all, shoot ten of each, and use masses 150 gr or more apart.", grains);
    }
}
