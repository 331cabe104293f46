namespace Ascham.Numerics;

/// <summary>Marcum's Q of first order: the chance that a unit round normal about a point a off lands farther than b from the origin.</summary>
static class MarcumQ
{
    /// <summary>Largest argument of <see cref="Upper"/> and <see cref="Lower"/>: beyond it exp(−a²/2) leaves the range of a double.</summary>
    internal const double Largest = 36;

    /// <summary>Q(a, b): the chance of landing outside, with full relative accuracy however small.</summary>
    /// <param name="a">Distance of the centre, in sigmas; 0 to <see cref="Largest"/>.</param>
    /// <param name="b">Radius, in sigmas; 0 to <see cref="Largest"/>.</param>
    /// <remarks>
    /// The chance that a Poisson number of mean b²/2 does not exceed one of mean a²/2; all terms are positive.
    /// Marcum (1960), A statistical theory of target detection by pulsed radar, <i>IRE Trans. Inf. Theory</i> 6.
    /// </remarks>
    internal static double Upper(double a, double b) => FirstNotAbove(b * b / 2, a * a / 2);

    /// <summary>1 − Q(a, b): the chance of landing inside, likewise.</summary>
    /// <inheritdoc cref="Upper"/>
    internal static double Lower(double a, double b) => FirstBelow(a * a / 2, b * b / 2);

    // P(N of mean x <= M of mean y)
    static double FirstNotAbove(double x, double y)
    {
        double first = Math.Exp(-x), second = Math.Exp(-y), below = 0, sum = 0;
        for (int k = 0; k < 40 || k < y || second > 1e-18 * sum; k++)
        {
            below += first;
            sum += second * below;
            first *= x / (k + 1);
            second *= y / (k + 1);
        }

        return sum;
    }

    // P(N of mean x < M of mean y)
    static double FirstBelow(double x, double y)
    {
        double first = Math.Exp(-x), second = Math.Exp(-y), below = 0, sum = 0;
        for (int k = 0; k < 40 || k < y || second > 1e-18 * sum; k++)
        {
            sum += second * below;
            below += first;
            first *= x / (k + 1);
            second *= y / (k + 1);
        }

        return sum;
    }
}
