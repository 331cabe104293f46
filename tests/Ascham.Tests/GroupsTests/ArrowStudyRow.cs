namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using UnitsNet;

/// <summary>How often intervals of numbered arrows hold the truth; sigma of the archer is 1 m.</summary>
public sealed record ArrowStudyRow(int Arrows, int Shots, double Planted, double Scatter, double Tau, double Share, double Offset)
{
    public static ArrowStudyRow Run(int arrows, int shots, double tau, int repeats, int seed)
    {
        var simulated = new Simulated(seed);
        double scatter = 0, held = 0, share = 0, offset = 0;
        for (int k = 0; k < repeats; k++)
        {
            double[] rights = [.. Enumerable.Range(0, arrows).Select(_ => tau * simulated.Normal())], ups = [.. rights.Select(_ => tau * simulated.Normal())];
            NumberedArrows<Length> fit = NumberedArrows.Of([Group.Of(Shoot(simulated, rights, ups, shots))], 0.9);
            scatter += Holds(fit.Scatter.Estimate.Low.Meters, fit.Scatter.Estimate.High.Meters, 1);
            held += Holds(fit.Tau.Low.Meters, fit.Tau.High.Meters, tau);
            share += Holds(fit.Share.Low, fit.Share.High, tau * tau / ((tau * tau) + 1));
            int pick = k % arrows;
            offset += Holds(fit.Arrows[pick].Up!.Low.Meters, fit.Arrows[pick].Up!.High.Meters, ups[pick] - ups.Average());
        }

        return new(arrows, shots, tau, scatter / repeats, held / repeats, share / repeats, offset / repeats);
    }

    /// <summary>One end in which every arrow of given offsets is shot a number of times.</summary>
    internal static IEnumerable<Shot> Shoot(Simulated simulated, double[] rights, double[] ups, int shots) =>
        Enumerable.Range(0, shots * rights.Length).Select(i => Simulated.Shot(i + 1, rights[i % rights.Length] + simulated.Normal(), ups[i % rights.Length] + simulated.Normal())
            with
        { Arrow = $"{(i % rights.Length) + 1}" });

    static double Holds(double low, double high, double truth) => low <= truth && truth <= high ? 1 : 0;
}
