namespace Ascham.Tests.CausesTests;

using Ascham.Causes;
using Ascham.Numerics;
using Ascham.Tests.Checks;
using Xunit;

/// <summary>A worked example with three one-parameter laws: shift y = θ f(x), computed with other code (closed forms, quadrature).</summary>
public class WorkedExampleTests
{
    static readonly double[] X = [20, 30, 40, 50, 60];
    static readonly double[] Seen = [0.8, 1.3, 3.1, 4.5, 6.9]; // cm

    static readonly (string Name, double Tau, Func<double, double>? Law)[] Models =
    [
        ("none", 0, null),
        ("const", 5, _ => 1),
        ("linear", 5.0 / 40, x => x),
        ("quadratic", 5.0 / 1600, x => x * x),
    ];

    static double Error(double x) => 0.09144 * x * Math.Sqrt(2.0 / 12); // sigma 1 mrad, 12 arrows in each of two groups

    static Posterior Solve(double tau, Func<double, double>? law, double[] y)
    {
        int n = X.Length;
        double[] l = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            l[i * n + i] = Error(X[i]) * Error(X[i]);
        }

        Assert.True(SmallCholesky.TryFactor(l, n, out double determinant));
        Posterior found = NormalEvidence.Solve(y, law is null ? [] : [.. X.Select(law)], law is null ? [] : [tau], l);
        return found with { LogLikelihood = found.LogLikelihood - determinant / 2 };
    }

    static double[] Probabilities(double[] y)
    {
        double[] logs = [.. Models.Select(m => Solve(m.Tau, m.Law, y).LogLikelihood)];
        double sum = logs.Sum(Math.Exp);
        return [.. logs.Select(l => Math.Exp(l) / sum)];
    }

    [Theory] // computed elsewhere in closed form; log of the Bayes factor against none, and the probability
    [InlineData(1, "3.73170008", ".00527668")]
    [InlineData(2, "7.41347499", ".20957280")]
    [InlineData(3, "8.73411826", ".78502413")]
    public void Bayes_factors_and_probabilities(int model, string logFactor, string probability)
    {
        double none = Solve(0, null, Seen).LogLikelihood;
        new Printed(logFactor, "worked example").Matches(Solve(Models[model].Tau, Models[model].Law, Seen).LogLikelihood - none);
        new Printed(probability, "worked example").Matches(Probabilities(Seen)[model]);
    }

    [Fact]
    public void Likelihood_of_nothing_and_size_of_the_quadratic_law()
    {
        new Printed("-17.30129654", "worked example").Matches(Solve(0, null, Seen).LogLikelihood);
        new Printed(".00012639", "worked example").Matches(Probabilities(Seen)[0]);
        Posterior quadratic = Solve(Models[3].Tau, Models[3].Law, Seen);
        new Printed(".0018156564", "worked example").Matches(quadratic.Mean[0]);
        new Printed(".0003904122", "worked example").Matches(Math.Sqrt(quadratic.Covariance[0]));
    }

    [Fact]
    public void A_noisy_draw_leaves_nothing_the_most_probable()
    {
        double[] p = ProbabilitiesOfSix([1.2, 1.4, -4.2, 1.9, 2.7]);
        new Printed(".5974", "worked example, 6 arrows").Matches(p[0]);
    }

    static double[] ProbabilitiesOfSix(double[] y) => Probabilities([.. y.Select(v => v / Math.Sqrt(2))], Math.Sqrt(2));

    // Six arrows instead of twelve: the errors grow by a factor, which the sizes must not share.
    static double[] Probabilities(double[] scaled, double factor)
    {
        double[] logs = [.. Models.Select(m => Solve(m.Tau / factor, m.Law, scaled).LogLikelihood)];
        double sum = logs.Sum(Math.Exp);
        return [.. logs.Select(l => Math.Exp(l) / sum)];
    }

    [Theory] // quadrature elsewhere, nats
    [InlineData(5, .206970)]
    [InlineData(10, .156623)]
    [InlineData(20, .068398)]
    [InlineData(30, .016229)]
    [InlineData(40, .001382)]
    [InlineData(50, .020681)]
    [InlineData(60, .064414)]
    [InlineData(80, .181670)]
    [InlineData(100, .290962)]
    public void Expected_information_of_the_next_distance(double yards, double nats)
    {
        double[] p = Probabilities(Seen), means = new double[4], variances = new double[4];
        for (int m = 0; m < 4; m++)
        {
            Posterior found = Solve(Models[m].Tau, Models[m].Law, Seen);
            double f = Models[m].Law?.Invoke(yards) ?? 0;
            means[m] = f == 0 ? 0 : f * found.Mean[0];
            variances[m] = Error(yards) * Error(yards) + (f == 0 ? 0 : f * f * found.Covariance[0]);
        }

        // by 40,000 points: one part in a hundred
        Assert.Equal(nats, Information.Of(p, means, variances, 1, 40_000), 0.01 * nats + 3e-5);
    }

    [Fact]
    public void Entropy_before_the_next_test()
    {
        double entropy = -Probabilities(Seen).Sum(p => p * Math.Log(p));
        new Printed(".546312", "worked example").Matches(entropy);
    }
}
