namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Quantities;
using UnitsNet;

/// <summary>How often 90 % statements are true, table by table; every row has its own fixed seed.</summary>
static class IntervalStudy
{
    internal const double Level = 0.90;

    internal const int Groups = 4000, Pairs = 1000, Hits = 80, Sets = 300, Growths = 300;

    internal static readonly int[] Sizes = [3, 5, 6, 12, 24];

    /// <summary>One group.</summary>
    internal static Tally OneGroup(Sampling sampling, int n)
    {
        var (simulated, tally) = (new Simulated(sampling.Seed(1, n)), new Tally());
        Scatter law = Scatter.Stretched(Simulated.At(0, 0), 1.Metres, sampling.Stretch.Metres, 0);
        double nine = HitProbability.RadiusHolding(law, 0.9).Meters;
        for (int k = 0; k < Groups; k++)
        {
            Group group = sampling.Group(simulated, n);
            Impact aim = Simulated.At(0, 0), next = Simulated.At(simulated.Normal(), sampling.Stretch * simulated.Normal());
            Centre centre = group.Centre(Level);
            Dispersion<Length> dispersion = group.Dispersion(Level);
            tally.Add("sigma, one axis", dispersion.Vertical.Estimate, sampling.Stretch);
            tally.Add("sigma, both axes", dispersion.BothAxes.Estimate, sampling.BothAxes);
            tally.Add("sigma from extreme spread", n > 20 ? null : RangeMeasure.Of(group, RangeKind.ExtremeSpread).ToSigma(Level).Estimate, sampling.BothAxes);
            tally.Add("radius of nine tenths", dispersion.RadiusHolding(0.9), nine);
            tally.Add("centre, one coordinate", centre.Up, 0);
            tally.Add("centre, disc", centre.Disc.Contains(aim));
            tally.Add("centre, ellipse", centre.Ellipse!.Contains(aim));
            tally.Add("next arrow, circle", NextArrow.Circle(group, Level).Contains(next));
            tally.Add("next arrow, ellipse", NextArrow.Ellipse(group, Level).Contains(next));
            tally.Add("axis ratio", GroupShape.Of(group, Level).AxisRatio, sampling.Stretch);
        }

        return tally;
    }

    /// <summary>Two groups whose centres are one sigma apart at a slant; the wild arrow, if any, is in the second.</summary>
    internal static Tally TwoGroups(Sampling sampling, int n)
    {
        var (simulated, tally) = (new Simulated(sampling.Seed(2, n)), new Tally());
        for (int k = 0; k < Pairs; k++)
        {
            Group first = (sampling with { Wild = 0 }).Group(simulated, n), second = sampling.Group(simulated, n, 0.6, 0.8);
            Dispersion<Length> a = first.Dispersion(Level), b = second.Dispersion(Level);
            tally.Add("spread ratio, one axis", TwoSpreads.Compare(a.Vertical, b.Vertical, Level).Ratio, 1);
            tally.Add("spread ratio, both axes", TwoSpreads.Compare(a.BothAxes, b.BothAxes, Level).Ratio, 1);
            CentreShift pooled = CentreShift.Between(first, second, SpreadModel.Round, Level), unlike = CentreShift.Between(first, second, SpreadModel.AnyShapeUnlike, Level);
            tally.Add("shift up, Round", pooled.Up, 0.8);
            tally.Add("shift up, AnyShapeUnlike", unlike.Up, 0.8);
            tally.Add("distance, Round", pooled.Distance, 1);
            tally.Add("distance, RoundUnlike", CentreShift.Between(first, second, SpreadModel.RoundUnlike, Level).Distance, 1);
            tally.Add("distance, AnyShape", CentreShift.Between(first, second, SpreadModel.AnyShape, Level).Distance, 1);
            tally.Add("distance, AnyShapeUnlike", unlike.Distance, 1);
            tally.Add("distance, James", CentreShift.Between(first, second, SpreadModel.AnyShapeUnlikeJames, Level).Distance, 1);
            tally.Add("distance in sigmas", pooled.InSigmas, 1 / sampling.BothAxes);
            tally.Add("distance from the aim, Recommended", CentreShift.FromAim(second, Simulated.At(0, 0), SpreadModel.Recommended, Level).Distance, 1);
            // One sigma apart is neither more nor less than a radius of one sigma: both answers are wrong by a hair.
            Verdict same = SameHole.Judge(first, second, 1.Metres, SpreadModel.Recommended, Level).Verdict;
            tally.Add("same hole, no false yes", same != Verdict.Yes);
            tally.Add("same hole, no false no", same != Verdict.No);
        }

        return tally;
    }

    /// <summary>One string that sinks by a tenth of sigma an arrow.</summary>
    internal static Tally Strings(Sampling sampling, int n)
    {
        const double slope = -0.1;
        var (simulated, tally) = (new Simulated(sampling.Seed(3, n)), new Tally());
        for (int k = 0; k < Pairs; k++)
        {
            Group still = sampling.Group(simulated, n);
            Group sinking = Group.Of(still.Impacts.Select((impact, i) => impact with { Up = impact.Up + Length.FromMeters(slope * i) }).ToArray());
            Trend<Length> trend = Trend.Of([sinking], Axis.Vertical, TrendAgainst.ShotOrder, Level);
            tally.Add("slope, least squares", trend.Slope, slope);
            tally.Add("slope, Theil and Sen", trend.RankSlope, slope);
            tally.Add("sigma about the line", trend.Residual.Estimate, sampling.Stretch);
            tally.Add("sigma from steps", trend.Steps?.Sigma.Estimate, sampling.Stretch);
        }

        return tally;
    }

    /// <summary>Hits of a circle of radius 1.5, scores of a face, and the farthest distance.</summary>
    internal static Tally Hit(Sampling sampling, int n, int repeats = Hits)
    {
        const double radius = 1.5, right = 0.3, up = 0.4;
        var (simulated, tally) = (new Simulated(sampling.Seed(4, n)), new Tally());
        Scatter aimed = Law(sampling, 0, 0), off = Law(sampling, right, up);
        double onAim = HitProbability.OfCircle(aimed, radius.Metres), asShot = HitProbability.OfCircle(off, radius.Metres);
        FaceGeometry face = FaceGeometry.TenZones(10.Metres);
        double score = RingScore.Of(face, 6.Millimetres, aimed).Mean;
        double reach = 40 * radius / HitProbability.RadiusHolding(aimed, 0.5).Meters / 2;
        for (int k = 0; k < repeats; k++)
        {
            Impact[] impacts = sampling.Impacts(simulated, n), moved = [.. impacts.Select(i => Simulated.At(i.Right.Meters + right, i.Up.Meters + up))];
            Group group = Group.Of(impacts, 40.Metres), shot = Group.Of(moved, 40.Metres);
            Said("on aim, Round", ScatterEstimate.From(group, ScatterShape.Round, CentreAssumption.OnAim), onAim);
            Said("on aim, Stretched", ScatterEstimate.From(group, ScatterShape.Stretched, CentreAssumption.OnAim), onAim);
            Said("as shot, Round", ScatterEstimate.From(shot, ScatterShape.Round, CentreAssumption.AsShot), asShot);
            Said("as shot, Stretched", ScatterEstimate.From(shot, ScatterShape.Stretched, CentreAssumption.AsShot), asShot);
            tally.Add("score, Round", RingScore.Of(face, 6.Millimetres, ScatterEstimate.From(group, ScatterShape.Round, CentreAssumption.OnAim), Level).PerArrow, score);
            tally.Add("share of hits counted", HitShare.Of(impacts.Count(i => double.Hypot(i.Right.Meters, i.Up.Meters) < radius), n, Level), onAim);
            // Half of the arrows hit a circle of half the radius at the reach; a claim beyond it is a false one.
            Length? claimed = HitProbability.Farthest(AngularScatter.From([group], ScatterShape.Round), (radius / 2).Metres, 0.5, Level, null).Distance;
            tally.Add("farthest not too far, Round", claimed is null || claimed.Value.Meters <= reach);
        }

        return tally;

        void Said(string how, ScatterEstimate estimate, double truth)
        {
            Estimate<double> said = HitProbability.OfCircle(estimate, radius.Metres, Level).Probability;
            tally.Add(how, said, truth);
            tally.Add($"{how}, lower end", said.Low <= truth);
        }
    }

    /// <summary>As many numbered arrows, each shot once in each of four ends; one shot may be wild.</summary>
    internal static Tally Numbered(Sampling sampling, int arrows, double tau)
    {
        var (simulated, tally) = (new Simulated(sampling.Seed(5, arrows) + (int)(10 * tau)), new Tally());
        for (int k = 0; k < Sets; k++)
        {
            double[][] own = [.. Enumerable.Range(0, arrows).Select(_ => new[] { tau * simulated.Normal(), tau * simulated.Normal() })];
            Impact[] scatter = sampling.Impacts(simulated, 4 * arrows);
            Group[] ends = [.. Enumerable.Range(0, 4).Select(end => Group.Of(Enumerable.Range(0, arrows).Select(i => Simulated.Shot(i + 1,
                own[i][0] + scatter[(end * arrows) + i].Right.Meters, own[i][1] + scatter[(end * arrows) + i].Up.Meters) with { Arrow = $"{i}" })))];
            NumberedArrows<Length> fit = NumberedArrows.Of(ends, Level);
            double mean = own.Average(o => o[1]), square = sampling.BothAxes * sampling.BothAxes;
            tally.Add("sigma of the archer", fit.Scatter.Estimate, sampling.BothAxes);
            tally.Add("tau", fit.Tau, tau);
            tally.Add("share of the arrows", fit.Share, tau * tau / ((tau * tau) + square));
            tally.Add("offset of an arrow", fit.Arrows[0].Up, own[0][1] - mean);
            ArrowOffset<Length> outermost = fit.Arrows.MaxBy(a => double.Hypot(a.Right!.Value.Meters, a.Up!.Value.Meters))!;
            tally.Add("offset of the outermost", outermost.Up, own[int.Parse(outermost.Arrow, System.Globalization.CultureInfo.InvariantCulture)][1] - mean);
            OddArrowStep<Length> suspect = fit.FindOdd(0.05, new(0.5, 2, 0.25)).Steps[0];
            int who = int.Parse(suspect.Arrow, System.Globalization.CultureInfo.InvariantCulture);
            double others = own.Where((_, i) => i != who).Average(o => o[1]);
            tally.Add("plain offset of the suspect", suspect.Up, own[who][1] - others);
        }

        return tally;
    }

    /// <summary>Groups of n arrows at each of five distances, 20 to 80 m; the wild arrow is 5 sigmas off at one of them.</summary>
    /// <param name="wild">How far off the wild arrow is, in sigmas.</param>
    /// <param name="n">Arrows at each distance.</param>
    /// <param name="parts">Fixed part in metres, angle in milliradians, drop part in metres at 80 m; negative for a part that is neither planted nor looked for.</param>
    internal static Tally Growth(double wild, int n, (double Fixed, double Angle, double Drop) parts)
    {
        var (simulated, tally) = (new Simulated(6_000_000 + (10_000 * n) + (int)(1000 * (Math.Max(0, parts.Fixed) + Math.Max(0, parts.Drop))) + (int)wild), new Tally());
        ShiftKind[] kinds = [.. new[] { (parts.Fixed, ShiftKind.Constant), (parts.Angle, ShiftKind.WithDistance), (parts.Drop, ShiftKind.WithSquare) }.Where(p => p.Item1 >= 0).Select(p => p.Item2)];
        double[] distances = [20, 35, 50, 65, 80];
        for (int k = 0; k < Growths; k++)
        {
            int odd = (int)(5 * simulated.Uniform());
            Group[] groups = [.. distances.Select((d, i) =>
            {
                double sigma = Math.Sqrt(Math.Pow(Math.Max(0, parts.Fixed), 2) + Math.Pow(1e-3 * parts.Angle * d, 2) + Math.Pow(Math.Max(0, parts.Drop) * d * d / 6400, 2));
                return Group.Of(new Sampling(1, i == odd ? wild : 0).Impacts(simulated, n, scale: sigma), d.Metres);
            })];
            ScatterGrowth growth = ScatterGrowth.Of(groups, Axis.Vertical, kinds, Level);
            tally.Add("fixed", growth.Fixed, parts.Fixed);
            tally.Add("angle", growth.Angle?.Map(a => Length.FromMeters(a.Milliradians)), parts.Angle);
            tally.Add("drop", growth.Drop, parts.Drop);
        }

        return tally;
    }

    static Scatter Law(Sampling sampling, double right, double up) => Scatter.Stretched(Simulated.At(right, up), 1.Metres, sampling.Stretch.Metres, 0);
}
