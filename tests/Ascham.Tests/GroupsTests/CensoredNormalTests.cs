namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.Checks;
using MathNet.Numerics;
using Xunit;

public class CensoredNormalTests
{
    static readonly CensoredSample[] Samples =
    [
        new([-0.4, 0.1, 0.7, 1.2], [new(+1, -0.8), new(+1, -0.8)]),
        new([0.3, 0.9, -0.2], []),
        new([0.5, -0.6, 1.0], [new(+1, -0.9), new(-1, 1.4)]),
    ];

    [Fact]
    public void Without_censoring_it_is_the_plain_pooled_answer_exactly()
    {
        CensoredSample[] plain = [new([1.0, 2, 6], []), new([4.0, 8], [])];
        CensoredNormal fit = CensoredNormal.Fit(plain)!;

        // SS = 14 + 8 about means 3 and 6, on 5 - 2 degrees of freedom.
        Assert.Equal(Math.Sqrt(22.0 / 3), fit.Sigma, 1e-15);
        Assert.Equal((3.0, 6.0, 3.0), (fit.Means[0], fit.Means[1], fit.DegreesOfFreedom));
        Assert.Equal(22.0 / 3 / 3, fit.Covariance(0, 0), 1e-14);
        Assert.Equal(0, fit.Covariance(0, 1));
    }

    [Fact] // an edge so far on the wrong side that every arrow lies beyond it tells nothing
    public void A_certain_miss_leaves_the_general_solver_at_the_plain_answer()
    {
        CensoredNormal fit = CensoredNormal.Fit([new([1.0, 2, 6], [new(+1, 500)]), new([4.0, 8], [])])!;

        Assert.Equal(Math.Sqrt(22.0 / 3), fit.Sigma, 1e-11);
        Assert.Equal(3, fit.DegreesOfFreedom, 1e-6);
        Assert.Equal(3, fit.Means[0], 1e-12);
    }

    [Theory] // A. C. Cohen (1961), Technometrics 3, 535: lambda(h, gamma = 0), mean = seen - lambda(seen - edge), sigma² = lambda(seen - edge)²; // from memory
    [InlineData(9, 1, "0.11020")]
    [InlineData(8, 2, "0.24268")]
    [InlineData(3, 1, "0.31862")]
    public void Mean_at_cohens_sigma_is_cohens_mean(int seen, int censored, string lambda)
    {
        var sample = new CensoredSample(Enumerable.Repeat(0.0, seen).ToArray(), Enumerable.Repeat(new Beyond(+1, -1), censored).ToArray());
        var printed = new Printed(lambda, "Cohen 1961, table 2");
        printed.Matches(-CensoredNormal.Profile.At(sample, Math.Sqrt(printed.Value)).Mean);
    }

    [Fact]
    public void Means_and_drift_agree_with_a_brute_search_of_the_likelihood()
    {
        CensoredNormal fit = CensoredNormal.Fit(Samples)!;
        for (int i = 0; i < Samples.Length; i++)
        {
            Assert.Equal(BruteMean(Samples[i], fit.Sigma), fit.Means[i], 1e-6);
            double byLog = (BruteMean(Samples[i], fit.Sigma * Math.Exp(1e-3)) - BruteMean(Samples[i], fit.Sigma * Math.Exp(-1e-3))) / 2e-3;
            Assert.Equal(byLog, fit.Drift[i], 2e-3);
        }
    }

    [Fact] // score, degrees of freedom and own variances against differences of the adjusted likelihood, written out plainly
    public void Sigma_maximises_the_adjusted_likelihood_and_its_curvature_gives_the_degrees_of_freedom()
    {
        CensoredNormal fit = CensoredNormal.Fit(Samples)!;
        double t = Math.Log(fit.Sigma);
        const double h = 2e-2;
        double low = Adjusted(t - h), middle = Adjusted(t), high = Adjusted(t + h);

        Assert.Equal(0, (high - low) / (2 * h), 2e-3);
        Assert.Equal(fit.DegreesOfFreedom, -(high - (2 * middle) + low) / h / h / 2, 2e-3);
        Assert.Equal(-1 / SecondByMean(Samples[0], fit.Means[0], fit.Sigma), fit.Own[0], 1e-5);

        double Adjusted(double logSigma)
        {
            double sigma = Math.Exp(logSigma), sum = 0;
            foreach (CensoredSample sample in Samples)
            {
                double mean = CensoredNormal.Profile.At(sample, sigma).Mean;
                sum += LogLikelihood(sample, mean, sigma) - (Math.Log(-SecondByMean(sample, mean, sigma)) / 2);
            }

            return sum;
        }
    }

    [Fact] // the exact counterpart of the adjustment integrates the means out; the adjustment is its Laplace approximation
    public void Adjusted_sigma_is_close_to_the_sigma_of_the_integrated_likelihood()
    {
        double best = Enumerable.Range(0, 800).Select(k => 0.4 + (k * 0.002)).MaxBy(sigma => Samples.Sum(s => Math.Log(Integrated(s, sigma))));
        Assert.Equal(best, CensoredNormal.Fit(Samples)!.Sigma, 0.03);

        static double Integrated(CensoredSample sample, double sigma) =>
            Integrate.OnClosedInterval(mean => Math.Exp(LogLikelihood(sample, mean, sigma)), -6, 6, 1e-10);
    }

    [Fact]
    public void Mirroring_mirrors_the_means_and_keeps_sigma()
    {
        CensoredSample[] mirrored = [.. Samples.Select(s => new CensoredSample([.. s.Values.Select(v => -v)], [.. s.Censored.Select(c => new Beyond(-c.Side, -c.Edge))]))];
        CensoredNormal fit = CensoredNormal.Fit(Samples)!, other = CensoredNormal.Fit(mirrored)!;

        Assert.Equal(fit.Sigma, other.Sigma, 1e-10);
        Assert.Equal(fit.Means[0], -other.Means[0], 1e-10);
        Assert.Equal(fit.Covariance(0, 2), other.Covariance(0, 2), 1e-9);
    }

    [Fact] // twenty of twenty-three arrows lost, and an edge forty sigmas off
    public void Extreme_samples_still_end()
    {
        CensoredNormal many = CensoredNormal.Fit([new([0.1, 0.2, 0.4], [.. Enumerable.Repeat(new Beyond(+1, 0), 20)])])!;
        CensoredNormal far = CensoredNormal.Fit([new([0.1, 0.2, 0.4], [new(+1, -40)])])!;

        Assert.True(many.Means[0] < 0 && double.IsFinite(many.Means[0]) && many.DegreesOfFreedom > 0);
        Assert.True(far.Means[0] < 0.1 && far.Sigma > 1 && far.DegreesOfFreedom > 0);
    }

    [Fact]
    public void Without_two_values_that_differ_there_is_no_sigma()
    {
        Assert.Null(CensoredNormal.Fit([new([1.0], [new(+1, 0)]), new([2.0], [])]));
        Assert.Null(CensoredNormal.Fit([new([1.0, 1.0], [new(+1, 0)])]));
    }

    static double LogLikelihood(CensoredSample sample, double mean, double sigma) =>
        sample.Values.Sum(v => -Math.Log(sigma) - ((v - mean) * (v - mean) / 2 / sigma / sigma))
        + sample.Censored.Sum(c => Math.Log(SpecialFunctions.Erfc(-c.Side * (c.Edge - mean) / sigma / Math.Sqrt(2)) / 2));

    static double SecondByMean(CensoredSample sample, double mean, double sigma)
    {
        const double h = 1e-3;
        return (LogLikelihood(sample, mean + h, sigma) - (2 * LogLikelihood(sample, mean, sigma)) + LogLikelihood(sample, mean - h, sigma)) / h / h;
    }

    // Golden-section search: slow, and shares nothing with the solver.
    static double BruteMean(CensoredSample sample, double sigma)
    {
        double low = -20, high = 20, ratio = (Math.Sqrt(5) - 1) / 2;
        while (high - low > 1e-9)
        {
            double a = high - (ratio * (high - low)), b = low + (ratio * (high - low));
            (low, high) = LogLikelihood(sample, a, sigma) > LogLikelihood(sample, b, sigma) ? (low, b) : (a, high);
        }

        return (low + high) / 2;
    }
}
