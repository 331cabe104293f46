namespace Ascham.Groups;

using System.Diagnostics.CodeAnalysis;
using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;

/// <summary>How far one centre lies from another, or from an aim point, and how surely.</summary>
/// <remarks>
/// <para><b>Model.</b> Normal groups, independent arrows, nothing moved within a group. The equations of each <see cref="SpreadModel"/> stand in docs/models/groups.md.</para>
/// <para><b>Limits.</b> That no shift is shown does not show that there is none: <see cref="SameHole"/> asks that question. A shift shown says nothing of its cause.
/// Error rates by simulation: docs/validation/groups-comparison.md.</para>
/// </remarks>
public sealed record CentreShift
{
    /// <summary>Shift to the right; Student interval for this coordinate alone.</summary>
    public required Estimate<Length> Right { get; init; }

    /// <summary>Shift upwards; Student interval for this coordinate alone.</summary>
    /// <remarks>
    /// <b>Limits.</b> With a round model in groups stretched upwards 2 to 1, 90 % intervals hold 80 times in 100, and those of <see cref="Right"/> too often: take an any-shape model there
    /// (docs/validation/coverage.md).
    /// </remarks>
    public required Estimate<Length> Up { get; init; }

    /// <summary>Distance between the centres.</summary>
    /// <remarks>
    /// Each end fails at most (1 − level)/2 of the time. The lower end is zero exactly when <see cref="Probability"/> is at least that; the upper end is the longest of the one-sided
    /// Student bounds in all directions, and so cautious when the centres are close. The value is the distance seen, which chance alone keeps above zero: read the interval.
    /// </remarks>
    public required Estimate<Length> Distance { get; init; }

    /// <summary>
    /// Distance in units of one sigma, with the exact noncentral-F interval; null unless the model is <see cref="SpreadModel.Round"/>. Its upper end is zero when the means are closer than chance
    /// usually leaves them.
    /// </summary>
    public required Estimate<double>? InSigmas { get; init; }

    /// <summary>How often groups without any shift would differ at least this much; small speaks for a shift.</summary>
    public required double Probability { get; init; }

    /// <summary>The model used; never <see cref="SpreadModel.Recommended"/>.</summary>
    public required SpreadModel Model { get; init; }

    /// <summary>Level of the intervals.</summary>
    public double Level => Distance.Level;

    /// <summary>Whether the centres differ at all.</summary>
    /// <remarks>Yes when <see cref="Probability"/> is below 1 − level, else cannot tell: these arrows never earn a no here, because a shift may be smaller than they can show.</remarks>
    public Verdict Shifted => Probability < 1 - Level ? Verdict.Yes : Verdict.CannotTell;

    /// <summary>Compares two groups.</summary>
    /// <param name="from">The group the shift starts from.</param>
    /// <param name="to">The group it ends at; same distance, where both are given.</param>
    /// <param name="model">What is assumed of the spread.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <returns>The centre of <paramref name="to"/> less that of <paramref name="from"/>, in the unit of <paramref name="from"/>.</returns>
    /// <exception cref="ArgumentException">The groups were shot at different distances.</exception>
    /// <exception cref="CannotTellException">Too few arrows for the model, no spread recorded, or an arrow missed.</exception>
    public static CentreShift Between(Group from, Group to, SpreadModel model, double level)
    {
        Check(from, to, level);
        model = Chosen(model, Math.Min(from.Moments.Count, to.Moments.Count));
        if (Obstacle(from, to, model) is { } obstacle)
        {
            throw obstacle;
        }

        Moments a = from.Moments, b = to.Moments;
        ShiftLaw law = ShiftLaw.Of(model, a, b);
        double share = (1.0 / a.Count) + (1.0 / b.Count);
        return Of(law, b.MeanRight - a.MeanRight, b.MeanUp - a.MeanUp, model, level, a.Count + b.Count, a.Count + b.Count - 2, share, from.InItsUnit);
    }

    /// <summary>Compares two groups where the arrows can tell.</summary>
    /// <param name="from">The group the shift starts from.</param>
    /// <param name="to">The group it ends at.</param>
    /// <param name="model">What is assumed of the spread.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <param name="shift">The shift, when told.</param>
    /// <param name="whyNot">Why it cannot be told, otherwise.</param>
    /// <returns>Whether it can be told.</returns>
    /// <exception cref="ArgumentException">The groups were shot at different distances.</exception>
    public static bool TryBetween(
        Group from, Group to, SpreadModel model, double level, [NotNullWhen(true)] out CentreShift? shift, [NotNullWhen(false)] out string? whyNot)
    {
        Check(from, to, level);
        whyNot = Obstacle(from, to, Chosen(model, Math.Min(from.Moments.Count, to.Moments.Count)))?.Message;
        shift = whyNot is null ? Between(from, to, model, level) : null;
        return whyNot is null;
    }

    /// <summary>Compares the centre of a group with a point aimed at.</summary>
    /// <param name="group">The group.</param>
    /// <param name="aim">The point, in the coordinates of the impacts: both offsets zero for the aim point itself.</param>
    /// <param name="model">What is assumed of the spread. With one group, like and unlike are the same; the any-shape models are Hotelling's one-sample test.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <returns>The centre of the group less the point, in the unit of the group.</returns>
    /// <exception cref="CannotTellException">Too few arrows for the model, no spread recorded, or an arrow missed.</exception>
    public static CentreShift FromAim(Group group, Impact aim, SpreadModel model, double level)
    {
        ArgumentNullException.ThrowIfNull(group);
        Require.Level(level);
        Moments moments = group.Moments;
        model = Chosen(model, moments.Count) is SpreadModel.Round or SpreadModel.RoundUnlike ? SpreadModel.Round : SpreadModel.AnyShape;
        var scatter = Symmetric.ScatterOf(moments);
        int n = moments.Count;
        if (Spread.OfLengths([group]).Obstacle(null) is { } obstacle)
        {
            throw obstacle;
        }

        if (model == SpreadModel.AnyShape && (n < 3 || scatter.Flat))
        {
            throw Shapeless(n);
        }

        ShiftLaw law = model == SpreadModel.Round ? ShiftLaw.OneSpread(scatter, n - 1, 1.0 / n) : ShiftLaw.OneShape(scatter, n - 1, 1.0 / n);
        return Of(law, moments.MeanRight - aim.Right.Meters, moments.MeanUp - aim.Up.Meters, model, level, n, n - 1, 1.0 / n, group.InItsUnit);
    }

    static CentreShift Of(
        ShiftLaw law, double right, double up, SpreadModel model, double level, int count, int degrees, double share, Func<double, Length> unit)
    {
        double tail = (1 - level) / 2, distance = double.Hypot(right, up), statistic = law.Statistic(right, up);
        double along = distance > 0 ? law.Variance.Of(right / distance, up / distance) : law.Variance.Trace / 2;
        Estimate<Length> Coordinate(double value, double r, double u)
        {
            double half = law.Reach(r, u, tail);
            return new(unit(value), unit(Math.Sqrt(law.Variance.Of(r, u))), unit(value - half), unit(value + half), level, count, $"difference of means with Student t interval; {law.Method}");
        }

        return new()
        {
            Right = Coordinate(right, 1, 0),
            Up = Coordinate(up, 0, 1),
            Distance = new(
                unit(distance), unit(Math.Sqrt(along)), unit(law.Lower(right, up, tail)), unit(law.Upper(right, up, tail)), level, count, $"distance of means; {law.Method}"),
            InSigmas = model == SpreadModel.Round ? Standardised(statistic, 2 * degrees, share, level, count) : null,
            Probability = law.Tail(statistic),
            Model = model,
        };
    }

    // |d|²/(2 s² c) follows noncentral F with 2 and nu degrees of freedom and noncentrality (|delta|/sigma)²/c.
    static Estimate<double> Standardised(double statistic, double nu, double share, double level, int count)
    {
        double tail = (1 - level) / 2, value = Math.Sqrt(statistic * share);
        double End(double below) => Math.Sqrt(NoncentralFisher.Noncentrality(statistic / 2, 2, nu, below) * share);
        double error = Math.Sqrt(share + (value * value / (2 * nu)));
        return new(value, error, End(1 - tail), End(tail), level, count, "distance of means over pooled s, noncentral F interval, round groups of one spread");
    }

    static SpreadModel Chosen(SpreadModel model, int arrows)
    {
        if (!Enum.IsDefined(model))
        {
            throw new ArgumentOutOfRangeException(nameof(model), model, "model must be one of the members of SpreadModel.");
        }

        return model != SpreadModel.Recommended ? model
            : arrows >= 12 ? SpreadModel.AnyShapeUnlike
            : arrows > 1 ? SpreadModel.RoundUnlike : SpreadModel.Round;
    }

    static void Check(Group from, Group to, double level)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        Require.Level(level);
        Groups.Dispersion.AtOneDistance([from, to]);
    }

    static CannotTellException? Obstacle(Group from, Group to, SpreadModel model)
    {
        int n1 = from.Moments.Count, n2 = to.Moments.Count;
        if (Spread.OfLengths([from, to]).Obstacle(null) is { } obstacle)
        {
            return obstacle;
        }

        if (Math.Min(n1, n2) == 0)
        {
            return new("One group has no counted impact, so there is no centre to compare. Count the called flyers too (WithCalled), or shoot again.");
        }

        Symmetric a = Symmetric.ScatterOf(from.Moments), b = Symmetric.ScatterOf(to.Moments);
        return model switch
        {
            SpreadModel.Round => null,
            SpreadModel.RoundUnlike when Math.Min(n1, n2) >= 2 => null,
            SpreadModel.RoundUnlike => new("A spread for each group cannot be told from one arrow. Shoot at least two in each, or assume one spread (Round)."),
            SpreadModel.AnyShape when n1 + n2 >= 4 && !(a + b).Flat => null,
            SpreadModel.AnyShapeUnlike or SpreadModel.AnyShapeUnlikeJames when Math.Min(n1, n2) >= 3 && !(a + b).Flat => null,
            _ => Shapeless(Math.Min(n1, n2)),
        };
    }

    static CannotTellException Shapeless(int arrows) => new(
        $"The shape of the spread cannot be told from {arrows} arrow{(arrows == 1 ? "" : "s")} a group, or the impacts lie on one line. "
        + "Shoot at least three in each, better five, or assume round groups.");
}
