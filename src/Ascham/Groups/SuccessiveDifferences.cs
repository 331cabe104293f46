namespace Ascham.Groups;

using MathNet.Numerics;

/// <summary>Von Neumann's ratio: how far arrows jump from one to the next, against how far they scatter altogether.</summary>
/// <typeparam name="T">Length at one distance, or Angle over distances.</typeparam>
/// <param name="Ratio">Sum of squared steps over the sum of squares about the mean, strings added up: 2 on average when shots are independent, less for drift, more for alternation.</param>
/// <param name="LowerProbability">How often the ratio would be as small or smaller: small for drift.</param>
/// <param name="HigherProbability">How often it would be as large or larger: small for alternation.</param>
/// <param name="Sigma">Sigma from the steps, √(sum/2), which a slow drift hardly widens; its degrees of freedom are Satterthwaite's.</param>
/// <remarks>
/// <para><b>Model.</b> Normal impacts; each string about its own mean. Mean and variance of the ratio are exact; between them stands a beta law on the range the
/// ratio can take, exact for one string of three.</para>
/// <para><b>Source.</b> Von Neumann, Kent, Bellinson and Hart (1941), <i>Ann. Math. Statist.</i> 12, 153.</para>
/// </remarks>
public sealed record SuccessiveDifferences<T>(double Ratio, double LowerProbability, double HigherProbability, Sigma<T> Sigma)
{
    internal static SuccessiveDifferences<T>? From(StringSeries[] strings, double level, Func<double, T> unit)
    {
        StringSeries[] told = [.. strings.Where(s => s.Count > 1)];
        double steps = told.Sum(s => s.Offset.Skip(1).Zip(s.Offset, (b, a) => (b - a) * (b - a)).Sum()), squares = told.Sum(s => Squares(s.Offset));
        int freedom = told.Sum(s => s.Count - 1);
        // sum and sum of squares of the eigenvalues 2 − 2 cos(pi k/n) of squared steps, k from 1 to n − 1
        double trace = 2.0 * freedom, traceOfSquare = told.Sum(s => (6.0 * s.Count) - 8);
        double variance = 2 * (traceOfSquare - (trace * trace / freedom)) / (freedom * (freedom + 2.0));
        if (squares == 0 || variance <= 1e-12)
        {
            return null;
        }

        double low = told.Min(s => Eigenvalue(1, s.Count)), high = told.Max(s => Eigenvalue(s.Count - 1, s.Count)), ratio = steps / squares;
        double mean = (2 - low) / (high - low), concentration = (mean * (1 - mean) * (high - low) * (high - low) / variance) - 1;
        double place = Math.Clamp((ratio - low) / (high - low), 0, 1), lower = SpecialFunctions.BetaRegularized(mean * concentration, (1 - mean) * concentration, place);
        double nu = trace * trace / traceOfSquare;
        return new(ratio, lower, 1 - lower, Groups.Sigma<T>.From(Math.Sqrt(steps / trace), nu, told.Sum(s => s.Count), level, "successive differences, normal", unit));
    }

    static double Eigenvalue(int k, int n) => 2 - (2 * Math.Cos(Math.PI * k / n));

    static double Squares(double[] values)
    {
        double mean = Moments.Mean(values);
        return values.Sum(v => (v - mean) * (v - mean));
    }
}
