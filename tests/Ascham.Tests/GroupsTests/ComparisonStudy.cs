namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using UnitsNet;

/// <summary>How two simulated groups differ in spread, shape and wild arrows; sigma across is one.</summary>
sealed record Pair(string Name, double StretchFirst, double StretchSecond, double ScaleSecond, double Wild)
{
    internal static Pair Round { get; } = new("round, alike", 1, 1, 1, 0);

    internal static Pair Stretched { get; } = new("stretched 2 to 1, alike", 2, 2, 1, 0);

    internal static Pair Wider { get; } = new("round, second twice as wide", 1, 1, 2, 0);

    internal static Pair StretchedWider { get; } = new("first stretched 2 to 1, second round and twice as wide", 2, 1, 2, 0);

    internal static Pair WithWild { get; } = new("round, one arrow of the second 5 sigma off", 1, 1, 1, 5);

    internal static Pair[] All { get; } = [Round, Stretched, Wider, StretchedWider, WithWild];

    internal Group First(Simulated simulated, int n) => simulated.Group(n, StretchFirst);

    internal Group Second(Simulated simulated, int n, double right, double up)
    {
        // The wild arrow's direction is random, so that it does not stand for a shift.
        double angle = Math.Atan2(simulated.Normal(), simulated.Normal());
        Impact Moved(Impact i, int k) => Simulated.At(
            (ScaleSecond * i.Right.Meters) + right + (k == 0 ? Wild * Math.Cos(angle) : 0), (ScaleSecond * i.Up.Meters) + up + (k == 0 ? Wild * Math.Sin(angle) : 0));
        return Group.Of(simulated.Group(n, StretchSecond).Impacts.Select(Moved).ToArray());
    }
}

/// <summary>Error rates of the comparison of centres by simulation.</summary>
static class ComparisonStudy
{
    internal const double Level = 0.90;

    internal static readonly SpreadModel[] Models =
        [SpreadModel.Round, SpreadModel.RoundUnlike, SpreadModel.AnyShape, SpreadModel.AnyShapeUnlike, SpreadModel.AnyShapeUnlikeJames];

    /// <summary>For each model, how often groups without a shift give a probability below 5 %.</summary>
    internal static double[] FalseShifts(Pair pair, int n, int pairs, int seed)
    {
        var simulated = new Simulated(seed);
        int[] found = new int[Models.Length];
        for (int k = 0; k < pairs; k++)
        {
            Group a = pair.First(simulated, n), b = pair.Second(simulated, n, 0, 0);
            for (int m = 0; m < Models.Length; m++)
            {
                // The law alone, since the study is long: CentreShift.Between would work out intervals too.
                ShiftLaw law = ShiftLaw.Of(Models[m], a.Moments, b.Moments);
                found[m] += law.Tail(law.Statistic(b.Moments.MeanRight - a.Moments.MeanRight, b.Moments.MeanUp - a.Moments.MeanUp)) < 0.05 ? 1 : 0;
            }
        }

        return [.. found.Select(f => f / (double)pairs)];
    }

    /// <summary>How often the recommended interval of the distance lies wholly above the truth, and wholly below it.</summary>
    internal static (double Above, double Below) Misses(Pair pair, int n, double right, double up, int pairs, int seed)
    {
        var simulated = new Simulated(seed);
        double truth = double.Hypot(right, up);
        int above = 0, below = 0;
        for (int k = 0; k < pairs; k++)
        {
            var distance = CentreShift.Between(pair.First(simulated, n), pair.Second(simulated, n, right, up), SpreadModel.Recommended, Level).Distance;
            above += distance.Low.Meters > truth ? 1 : 0;
            below += distance.High.Meters < truth ? 1 : 0;
        }

        return (above / (double)pairs, below / (double)pairs);
    }

    /// <summary>Shares of yes and of no.</summary>
    internal static (double Yes, double No) Answers(Pair pair, int n, double within, double apart, int pairs, int seed)
    {
        var simulated = new Simulated(seed);
        int yes = 0, no = 0;
        for (int k = 0; k < pairs; k++)
        {
            Group a = pair.First(simulated, n), b = pair.Second(simulated, n, apart, 0);
            Verdict verdict = SameHole.Judge(a, b, Length.FromMeters(within), SpreadModel.Recommended, Level).Verdict;
            yes += verdict == Verdict.Yes ? 1 : 0;
            no += verdict == Verdict.No ? 1 : 0;
        }

        return (yes / (double)pairs, no / (double)pairs);
    }

    /// <summary>How often a sound group, and one with its first arrow off, has that or another arrow flagged: round rule, any shape, one axis.</summary>
    internal static double[] Flags(int n, double stretch, double off, int groups, int seed)
    {
        var simulated = new Simulated(seed);
        int[] flagged = new int[3];
        for (int k = 0; k < groups; k++)
        {
            Group sound = simulated.Group(n, stretch);
            Group group = Group.Of(sound.Impacts.Select((i, j) => j == 0 ? Simulated.At(i.Right.Meters + off, i.Up.Meters) : i).ToArray());
            bool Hit(OutlierCheck check) => off == 0 ? check.StandsOut == Verdict.Yes : check.Beyond.Contains(0);
            flagged[0] += Hit(OutlierCheck.Round(group, 0.05)) ? 1 : 0;
            flagged[1] += n > 3 && Hit(OutlierCheck.AnyShape(group, 0.05)) ? 1 : 0;
            flagged[2] += Hit(OutlierCheck.Along(group, Axis.Horizontal, 0.05)) ? 1 : 0;
        }

        return [.. flagged.Select(f => f / (double)groups)];
    }

    /// <summary>Coverage of 90 % statements of one group: next arrow in circle and in ellipse, axis ratio, ratio of two spreads.</summary>
    internal static double[] Coverage(int n, double stretch, double wild, int groups, int seed)
    {
        var simulated = new Simulated(seed);
        int[] held = new int[4];
        for (int k = 0; k < groups; k++)
        {
            Group sound = simulated.Group(n, stretch), other = simulated.Group(n, stretch);
            Group group = Group.Of(sound.Impacts.Select((i, j) => j == 0 ? Simulated.At(i.Right.Meters + wild, i.Up.Meters) : i).ToArray());
            Impact next = Simulated.At(simulated.Normal(), stretch * simulated.Normal());
            GroupShape shape = GroupShape.Of(group, Level);
            var ratio = TwoSpreads.Compare(group.Dispersion(Level).BothAxes, other.Dispersion(Level).BothAxes, Level).Ratio;
            held[0] += NextArrow.Circle(group, Level).Contains(next) ? 1 : 0;
            held[1] += NextArrow.Ellipse(group, Level).Contains(next) ? 1 : 0;
            held[2] += shape.AxisRatio.Low <= stretch && stretch <= shape.AxisRatio.High ? 1 : 0;
            held[3] += ratio.Low <= 1 && 1 <= ratio.High ? 1 : 0;
        }

        return [.. held.Select(h => h / (double)groups)];
    }
}
