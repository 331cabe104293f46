namespace Ascham.Groups;

using Ascham.Numerics;
using Ascham.Quantities;

/// <summary>The standard deviation of impacts along one axis, with what it rests on.</summary>
/// <typeparam name="T">Length at one distance, or Angle over distances.</typeparam>
/// <param name="Estimate">
/// Sigma corrected for small samples, s/c(nu), so that it is right on average; interval s·sqrt(nu/chi-square quantile), exact for normal impacts.
/// The corrected value need not lie in the middle of the interval.
/// </param>
/// <param name="Sample">s, the root of the unbiased variance: sum of squares over degrees of freedom. It is on average c(nu) times sigma.</param>
/// <param name="DegreesOfFreedom">nu; positive, and not a whole number when missed arrows took part.</param>
/// <remarks>
/// <para><b>Model.</b> Normal impacts, independent, same sigma throughout; nothing known about the centre.</para>
/// <para><b>Limits.</b> One wild arrow breaks it: in round groups 90 % intervals of one axis then hold 38 times in 100 (3 arrows) to 53 (24), of both axes 9 to 30; pooling both axes of a stretched group holds 84 to 87 (docs/validation/coverage.md).</para>
/// <para><b>Source.</b> NIST/SEMATECH e-Handbook of Statistical Methods, sections 6.3.2 (c4) and 7.2.3 (chi-square interval).</para>
/// </remarks>
public sealed record Sigma<T>(Estimate<T> Estimate, T Sample, double DegreesOfFreedom)
{
    internal static Sigma<T> From(double s, double nu, int count, double level, string how, Func<double, T> unit)
    {
        double c = Quantiles.C4(nu), value = s / c;
        var (low, high) = Quantiles.SigmaMultipliers(nu, level);
        double error = value * Math.Sqrt(Math.Max(0, 1 - (c * c))) / c;
        return new(new(unit(value), unit(error), unit(s * low), unit(s * high), level, count, how), unit(s), nu);
    }
}
