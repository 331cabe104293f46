namespace Ascham.Groups;

using Ascham.Numerics;
using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using UnitsNet;
using UnitsNet.Units;

/// <summary>What numbered arrows tell: how much the arrows differ, how much the archer scatters, and where each arrow strikes.</summary>
/// <typeparam name="T">Length at one distance, or Angle over distances.</typeparam>
/// <remarks>
/// <para><b>Model.</b> impact = centre of the end + offset of the arrow + scatter of the archer; offsets normal with sigma tau, scatter normal with sigma, the same
/// along both axes when both are taken. Any number of shots of each arrow in each end.</para>
/// <para><b>Limits.</b> Shuffle the arrows: an order kept from end to end turns tiring into an arrow. The centre of an end is spent on it, so an end of one arrow tells nothing.</para>
/// <para><b>Source.</b> Restricted maximum likelihood: Patterson and Thompson (1971), <i>Biometrika</i> 58, 545. With equal numbers it is the analysis of variance.</para>
/// </remarks>
public sealed class NumberedArrows<T>
{
    readonly ArrowFit fit;
    readonly IReadOnlyList<ArrowMark> marks;
    readonly Axis? axis;
    readonly Func<double, T> unit;
    readonly Lazy<IReadOnlyList<ArrowOffset<T>>> arrows;

    internal NumberedArrows(string[] names, IReadOnlyList<ArrowMark> marks, Axis? axis, double level, int leftOut, Func<double, T> unit)
    {
        (this.marks, this.axis, this.unit, Level, LeftOut, fit) = (marks, axis, unit, level, leftOut, ArrowFit.Of(names, marks));
        Scatter = Sigma<T>.From(Math.Sqrt(fit.MeanSquareWithin), fit.FreedomWithin, marks.Count, level, "s/c(nu) within arrows and ends, normal", unit);
        double ratio = ArrowVariance.Ratio(fit), width = 2 * Normal.InvCDF(0, 1, (1 + level) / 2);
        var (low, high) = ArrowVariance.TauSquareInterval(fit, level);
        double tau = Math.Sqrt(ratio * ArrowVariance.SigmaSquare(fit, ratio)), lowest = Math.Min(tau, Math.Sqrt(low)), highest = Math.Max(tau, Math.Sqrt(high));
        Tau = new(unit(tau), unit((highest - lowest) / width), unit(lowest), unit(highest), level, names.Length, "restricted maximum likelihood, generalised interval, normal arrows");
        var (from, to) = ArrowVariance.RatioInterval(fit, level);
        Share = new(ratio / (1 + ratio), ((to / (1 + to)) - (from / (1 + from))) / width, from / (1 + from), to / (1 + to), level, names.Length, "restricted maximum likelihood, exact F interval, normal arrows");
        arrows = new(Offsets);
    }

    /// <summary>Level of the intervals.</summary>
    public double Level { get; }

    /// <summary>Counted shots left out because no number was recorded.</summary>
    public int LeftOut { get; }

    /// <summary>Sigma of the archer along one axis: what is left when arrows and ends are taken out.</summary>
    public Sigma<T> Scatter { get; }

    /// <summary>
    /// Tau: sigma of the arrows' own offsets along one axis; zero when they differ no more than chance makes them, which is common and no proof that they are alike:
    /// read the interval. The standard error is the width of the interval over that of a normal one. Once in a while (one time in twenty at 90 %, when all arrows are alike) the arrows lie closer together than
    /// chance leaves them, and the whole interval is zero: that is no certainty, see <see cref="Probability"/> near 1. See docs/limits.md.
    /// </summary>
    public Estimate<T> Tau { get; }

    /// <summary>tau²/(tau² + sigma²): the arrows' share of the variance, with an exact interval; wholly zero in the same rare case as that of <see cref="Tau"/>.</summary>
    public Estimate<double> Share { get; }

    /// <summary>Mean square between arrows over mean square within.</summary>
    public double F => fit.F;

    /// <summary>Degrees of freedom between arrows, axes added.</summary>
    public int FreedomBetween => fit.FreedomBetween;

    /// <summary>Degrees of freedom within, axes added.</summary>
    public int FreedomWithin => fit.FreedomWithin;

    /// <summary>How often the arrows would seem to differ so much if they were all alike.</summary>
    public double Probability => NoncentralF.Survival(F, FreedomBetween, FreedomWithin);

    /// <summary>Where each arrow strikes, shrunken; in order of first appearance.</summary>
    public IReadOnlyList<ArrowOffset<T>> Arrows => arrows.Value;

    /// <summary>Looks for an arrow that does not belong.</summary>
    /// <param name="falseAlarm">How often any arrow at all may be named when all are alike, between 0 and 1.</param>
    /// <param name="prior">What is thought likely before looking, for the probability that the arrow named is the odd one.</param>
    /// <returns>The search.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="falseAlarm"/> is not between 0 and 1.</exception>
    public OddArrow<T> FindOdd(double falseAlarm, OddArrowPrior prior)
    {
        ArgumentNullException.ThrowIfNull(prior);
        return new(fit, marks, axis, unit, Level, Require.Level(falseAlarm), prior);
    }

    ArrowOffset<T>[] Offsets()
    {
        var shrinkage = new ArrowShrinkage(fit, Level);
        Estimate<T>? Along(int arrow, Axis wanted) =>
            axis is null ? shrinkage.Offset(arrow, wanted == Axis.Horizontal ? 0 : 1).Map(unit)
            : axis == wanted ? shrinkage.Offset(arrow, 0).Map(unit)
            : null;
        return [.. fit.Names.Select((name, i) => new ArrowOffset<T>(name, fit.Shots[i], Along(i, Axis.Horizontal), Along(i, Axis.Vertical), shrinkage.Kept(i)))];
    }
}

/// <summary>Reads ends of numbered arrows.</summary>
public static class NumberedArrows
{
    /// <summary>Takes ends shot at one distance, both axes together (round scatter).</summary>
    /// <param name="ends">One end or more, each a group with its own centre and without missed arrows; shots carry the number of their arrow.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <returns>What they tell, as lengths on the face in the unit of the first impact.</returns>
    /// <exception cref="ArgumentException">No end, or ends at several distances.</exception>
    /// <exception cref="CannotTellException">Fewer than three numbered arrows, none shot twice, arrows never shot together, no scatter at all, or an arrow missed.</exception>
    public static NumberedArrows<Length> Of(IEnumerable<Group> ends, double level) => OfLengths(ends, null, level);

    /// <summary>Takes ends shot at one distance, one axis alone.</summary>
    /// <inheritdoc cref="Of(IEnumerable{Group}, double)"/>
    /// <param name="ends">One end or more, each a group with its own centre and without missed arrows; shots carry the number of their arrow.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    public static NumberedArrows<Length> Of(IEnumerable<Group> ends, Axis axis, double level) => OfLengths(ends, axis, level);

    /// <summary>Takes ends shot at any distances, as angles, both axes together (round scatter).</summary>
    /// <param name="ends">One end or more, each a group of known distance with its own centre and without missed arrows; shots carry the number of their arrow.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <returns>What they tell, in milliradians.</returns>
    /// <exception cref="ArgumentException">No end, or one without a distance.</exception>
    /// <exception cref="CannotTellException">As for lengths.</exception>
    /// <remarks><b>Limits.</b> Takes an arrow's offset to grow with the distance, as a launch angle does; an arrow of other drag or mass strays faster than that.</remarks>
    public static NumberedArrows<Angle> OfAngles(IEnumerable<Group> ends, double level)
    {
        Group[] all = StringSeries.Checked(ends, true);
        return Read(all, null, level, g => g.Distance!.Value.Meters, radians => Angle.FromRadians(radians).ToUnit(AngleUnit.Milliradian));
    }

    static NumberedArrows<Length> OfLengths(IEnumerable<Group> ends, Axis? axis, double level)
    {
        Group[] all = StringSeries.Checked(ends, false);
        Length[] distances = [.. all.Select(g => g.Distance).OfType<Length>()];
        return distances.All(d => ShotCheck.Same(d, distances[0]))
            ? Read(all, axis, level, _ => 1, all[0].InItsUnit)
            : throw new ArgumentException("ends must be of one distance; OfAngles sets ends of several distances side by side.", nameof(ends));
    }

    static NumberedArrows<T> Read<T>(Group[] ends, Axis? axis, double level, Func<Group, double> scale, Func<double, T> unit)
    {
        Require.Level(level);
        if (ends.Sum(g => g.Missed) is > 0 and var missed)
        {
            throw new MissedArrowsException(missed, ends.Sum(g => g.Impacts.Count));
        }

        List<string> names = [];
        List<ArrowMark> marks = [];
        int leftOut = 0;
        for (int end = 0; end < ends.Length; end++)
        {
            double metres = scale(ends[end]);
            bool aside = ends[end].CalledSetAside > 0;
            leftOut += ends[end].Shots.Count == 0 ? ends[end].Impacts.Count : 0;
            foreach (Shot shot in ends[end].Shots.Where(s => s.Impact is not null && !(aside && s.Called)))
            {
                if (string.IsNullOrEmpty(shot.Arrow))
                {
                    leftOut++;
                    continue;
                }

                if (!names.Contains(shot.Arrow))
                {
                    names.Add(shot.Arrow);
                }

                double right = shot.Impact!.Value.Right.Meters / metres, up = shot.Impact.Value.Up.Meters / metres;
                marks.Add(new(names.IndexOf(shot.Arrow), end, axis switch { null => [right, up], Axis.Horizontal => [right], _ => [up] }));
            }
        }

        return new([.. names], marks, axis, level, leftOut, unit);
    }
}
