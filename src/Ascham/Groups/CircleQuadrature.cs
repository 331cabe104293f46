namespace Ascham.Groups;

using Ascham.Numerics;
using MathNet.Numerics;
using MathNet.Numerics.Integration;

/// <summary>The chance of landing in a circle about the target's centre, by Gauss-Legendre quadrature along the narrow principal axis.</summary>
static class CircleQuadrature
{
    // Beyond nine sigmas lies 1e-19 of the law.
    const double Reach = 9;

    static readonly GaussLegendreRule Fine = new(-1, 1, 64), Coarse = new(-1, 1, 20);

    /// <summary>Chance of landing within a radius; absolute error below 1e-12.</summary>
    internal static double Inside(Scatter scatter, double radius) => Inside(scatter, radius, Fine);

    /// <summary>The same for one of many laws that will be averaged or sorted: absolute error below 1e-5, a third of the time.</summary>
    internal static double Roughly(Scatter scatter, double radius) => Inside(scatter, radius, Coarse);

    static double Inside(Scatter scatter, double radius, GaussLegendreRule rule)
    {
        var (small, large, smallMean, largeMean) = scatter.Principal();
        if (radius <= 0)
        {
            return 0;
        }

        if (small == large && small > 0 && radius <= MarcumQ.Largest * small && Math.Abs(largeMean) <= MarcumQ.Largest * small)
        {
            return MarcumQ.Lower(Math.Abs(largeMean) / small, radius / small);
        }

        return small > 0 ? Integral(small, large, smallMean, largeMean, radius, rule) : OnLine(large, smallMean, largeMean, radius);
    }

    /// <summary>Integral over the angle t of R cos t · density(R sin t) · share of the chord at R sin t.</summary>
    /// <remarks>
    /// The angle makes the integrand smooth where the chord shrinks to nothing. The narrow axis is the outer one, so that the chord's share never changes faster
    /// than the density. A circle of many sigmas has a sharp rim in t, met with more panels.
    /// </remarks>
    internal static double Integral(double small, double large, double smallMean, double largeMean, double radius, GaussLegendreRule? nodes = null)
    {
        GaussLegendreRule rule = nodes ?? Fine;
        double low = Math.Max(-1, (smallMean - (Reach * small)) / radius), high = Math.Min(1, (smallMean + (Reach * small)) / radius);
        if (low >= high)
        {
            return 0;
        }

        double from = Math.Asin(low), to = Math.Asin(high);
        int panels = 1 + (int)(Math.Sqrt(2 * Reach * radius / small) * 4 / rule.Order);
        double half = (to - from) / (2 * panels), sum = 0;
        if (smallMean == 0 && largeMean == 0 && panels == 1)
        {
            return Centred(small, large, radius, half, rule);
        }

        for (int panel = 0; panel < panels; panel++)
        {
            double middle = from + (half * ((2 * panel) + 1));
            for (int i = 0; i < rule.Order; i++)
            {
                var (sine, cosine) = Math.SinCos(middle + (half * rule.Abscissas[i]));
                double chord = radius * cosine, z = ((radius * sine) - smallMean) / small;
                sum += rule.Weights[i] * chord * Math.Exp(-z * z / 2) * Between((-chord - largeMean) / large, (chord - largeMean) / large);
            }
        }

        return Math.Clamp(sum * half / (small * Math.Sqrt(2 * Math.PI)), 0, 1);
    }

    // The same sum where it is even in t: half the nodes, and one error function each; hit probabilities of a sight that is on ask it thousands of times.
    static double Centred(double small, double large, double radius, double half, GaussLegendreRule rule)
    {
        double sum = 0;
        for (int i = rule.Order / 2; i < rule.Order; i++)
        {
            var (sine, cosine) = Math.SinCos(half * rule.Abscissas[i]);
            double chord = radius * cosine, z = radius * sine / small;
            sum += rule.Weights[i] * chord * Math.Exp(-z * z / 2) * SpecialFunctions.Erf(chord / large / Constants.Sqrt2);
        }

        return Math.Clamp(2 * sum * half / (small * Math.Sqrt(2 * Math.PI)), 0, 1);
    }

    // No width along one axis, or along both.
    static double OnLine(double large, double smallMean, double largeMean, double radius)
    {
        double square = (radius * radius) - (smallMean * smallMean);
        if (square < 0)
        {
            return 0;
        }

        double chord = Math.Sqrt(square);
        return large > 0 ? Between((-chord - largeMean) / large, (chord - largeMean) / large) : Math.Abs(largeMean) <= chord ? 1 : 0;
    }

    // Phi(b) − Phi(a), taken on the side where both are small.
    static double Between(double a, double b) => a > 0
        ? (SpecialFunctions.Erfc(a / Constants.Sqrt2) - SpecialFunctions.Erfc(b / Constants.Sqrt2)) / 2
        : (SpecialFunctions.Erfc(-b / Constants.Sqrt2) - SpecialFunctions.Erfc(-a / Constants.Sqrt2)) / 2;
}
