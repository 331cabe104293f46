namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using UnitsNet;
using Xunit;

/// <summary>Stations with a fifth of the arrows missed low: how often 90 % intervals hold the truth, and how far estimates lean; published in docs/models/groups.md.</summary>
public class CensoredCoverageTests
{
    // butt known or not, stations, arrows each; mean held, sigma held, lean of the mean, lean of the mean that ignores misses (in sigma), sigma over truth
    [Theory]
    [InlineData(true, 1, 12, "0.930", "0.891", "-0.025", "0.350", "1.058")]
    [InlineData(true, 3, 6, "0.926", "0.868", "-0.043", "0.352", "1.078")]
    [InlineData(true, 5, 4, "0.938", "0.863", "-0.070", "0.343", "1.118")]
    [InlineData(true, 3, 12, "0.914", "0.892", "-0.024", "0.351", "1.036")]
    [InlineData(true, 3, 36, "0.901", "0.897", "-0.007", "0.350", "1.010")]
    [InlineData(false, 1, 12, "0.913", "0.901", "0.034", "0.350", "0.973")]
    [InlineData(false, 3, 6, "0.890", "0.871", "0.073", "0.352", "0.916")]
    [InlineData(false, 5, 4, "0.889", "0.867", "0.095", "0.343", "0.885")]
    [InlineData(false, 3, 12, "0.897", "0.892", "0.033", "0.351", "0.956")]
    [InlineData(false, 3, 36, "0.894", "0.884", "0.013", "0.350", "0.983")]
    public void With_a_fifth_of_the_arrows_missed_low_the_centre_is_held(bool known, int stations, int n, params string[] printed)
    {
        const double edge = -0.8416212; // 20 % point of the standard normal
        const double sigma = 0.05; // 1 mrad at 50 m
        var options = known ? new StationOptions { ButtBelow = Length.FromMeters(-edge * sigma) } : new();
        var simulated = new Simulated((1000 * stations) + n);
        List<double> held = [], sigmaHeld = [], lean = [], leanIgnoring = [], sigmas = [];
        for (int k = 0; k < 3600 / stations; k++)
        {
            StationCentres fit = StationCentres.Fit(StationGroup.From(simulated.Stations(stations, n, edge)), options);
            var spread = fit.Vertical.Estimate;
            sigmaHeld.Add(spread.Low.Milliradians <= 1 && spread.High.Milliradians >= 1 ? 1 : 0);
            sigmas.Add(spread.Value.Milliradians);
            held.AddRange(fit.Stations.Select(s => s.Up.Low.Meters <= 0 && s.Up.High.Meters >= 0 ? 1.0 : 0));
            lean.AddRange(fit.Stations.Select(s => s.MeanUp.Meters / sigma));
            leanIgnoring.AddRange(fit.Stations.Select(s => s.Station.Impacts.Average(i => i.Up.Meters) / sigma));
        }

        Document.Publishes($"{(known ? "known" : "not known")}, {stations} x {n}", printed, [held.Average(), sigmaHeld.Average(), lean.Average(), leanIgnoring.Average(), sigmas.Average()]);
        Assert.InRange(held.Average(), 0.86, 0.95);
        Assert.InRange(sigmaHeld.Average(), 0.83, 0.92);
        Assert.True(Math.Abs(lean.Average()) < leanIgnoring.Average() / 3);
    }
}
