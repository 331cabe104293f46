namespace Ascham.Groups;

using MathNet.Numerics;

/// <summary>The ratio that a censored normal observation brings into the likelihood, safe far out in the tail.</summary>
static class NormalTail
{
    /// <summary>lambda(a) = phi(a)/Phi(a), the derivative of ln Phi.</summary>
    /// <remarks>Below −6 by the continued fraction of the Mills ratio (Laplace), where Phi itself would lose digits and then vanish.</remarks>
    internal static double Hazard(double a)
    {
        if (a > -6)
        {
            return Math.Exp(-a * a / 2) / Math.Sqrt(2 * Math.PI) / (SpecialFunctions.Erfc(-a / Math.Sqrt(2)) / 2);
        }

        double t = -a, fraction = t;
        for (int k = 40; k >= 1; k--)
        {
            fraction = t + (k / fraction);
        }

        return fraction;
    }

    /// <summary>w(a) = lambda(lambda + a): how much a censored arrow tells compared with one that struck; between 0 and 1.</summary>
    internal static double Weight(double a)
    {
        double hazard = Hazard(a);
        return hazard * (hazard + a);
    }

    /// <summary>dw/da, negative.</summary>
    internal static double WeightSlope(double a)
    {
        double hazard = Hazard(a), weight = hazard * (hazard + a);
        return (hazard * (1 - weight)) - (weight * (hazard + a));
    }
}
