namespace Ascham.Groups;

using System.Diagnostics.CodeAnalysis;
using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Arrows shot at one aim from one distance: where they struck, which the archer called, how many missed.</summary>
/// <remarks>
/// <para>A called flyer is one the archer declared before looking. It is set aside, counted and kept: <see cref="WithCalled"/> gives the other view.
/// Setting it aside is fair only if the call did not depend on where the arrow landed; report both views.</para>
/// <para><b>Model.</b> Impacts are independent and normal about one centre. Nothing is dropped because of where it landed.</para>
/// </remarks>
public sealed class Group
{
    readonly LengthUnit unit;

    Group(IReadOnlyList<Shot> shots, IReadOnlyList<Impact> impacts, IReadOnlyList<Impact> called, int missed, int calledMissed, Length? distance)
    {
        (Shots, Impacts, CalledImpacts, Missed, CalledMissed, Distance) = (shots, impacts, called, missed, calledMissed, distance);
        unit = impacts.Concat(called).Select(i => i.Up.Unit).FirstOrDefault(LengthUnit.Meter);
        Moments = Moments.Of(impacts);
    }

    /// <summary>All shots given, in their order, called and missed ones too; empty when the group was made of bare impacts.</summary>
    public IReadOnlyList<Shot> Shots { get; }

    /// <summary>The impacts that count, in the order given.</summary>
    public IReadOnlyList<Impact> Impacts { get; }

    /// <summary>Impacts of called flyers set aside.</summary>
    public IReadOnlyList<Impact> CalledImpacts { get; }

    /// <summary>Number of arrows that count: struck or missed, not set aside.</summary>
    public int Counted => Impacts.Count + Missed;

    /// <summary>Number of called flyers set aside, struck or missed.</summary>
    public int CalledSetAside => CalledImpacts.Count + CalledMissed;

    /// <summary>Number of counted arrows that missed the butt.</summary>
    public int Missed { get; }

    /// <summary>Distance shot from; null when not given.</summary>
    public Length? Distance { get; }

    internal Moments Moments { get; }

    int CalledMissed { get; }

    /// <summary>Makes a group of impacts, all counted, at a distance that does not matter.</summary>
    /// <param name="impacts">One impact or more.</param>
    /// <returns>The group.</returns>
    /// <exception cref="ArgumentException">No impact.</exception>
    public static Group Of(IEnumerable<Impact> impacts) => Of(impacts, null);

    /// <summary>Makes a group of impacts, all counted, at a known distance.</summary>
    /// <param name="impacts">One impact or more.</param>
    /// <param name="distance">Distance to the face along the line of sight; positive.</param>
    /// <returns>The group.</returns>
    /// <exception cref="ArgumentException">No impact.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="distance"/> is not positive.</exception>
    public static Group Of(IEnumerable<Impact> impacts, Length distance)
    {
        Require.Positive(distance.Meters, "m", nameof(distance));
        return Of(impacts, (Length?)distance);
    }

    /// <summary>Makes a group of columns of numbers, all counted, at a distance that does not matter.</summary>
    /// <param name="right">Offsets to the right in metres; one or more, all finite.</param>
    /// <param name="up">Offsets upwards in metres; as many.</param>
    /// <returns>The group: the same as of impacts, at a fraction of the time and memory where there are millions. The columns are copied.</returns>
    /// <exception cref="ArgumentException">No offset, columns of unlike length, or an offset that is not finite.</exception>
    public static Group OfMetres(ReadOnlySpan<double> right, ReadOnlySpan<double> up) => OfMetres(right, up, null);

    /// <summary>Makes a group of columns of numbers, all counted, at a known distance.</summary>
    /// <inheritdoc cref="OfMetres(ReadOnlySpan{double}, ReadOnlySpan{double})"/>
    /// <param name="right">Offsets to the right in metres; one or more, all finite.</param>
    /// <param name="up">Offsets upwards in metres; as many.</param>
    /// <param name="distance">Distance to the face along the line of sight; positive.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="distance"/> is not positive.</exception>
    public static Group OfMetres(ReadOnlySpan<double> right, ReadOnlySpan<double> up, Length distance)
    {
        Require.Positive(distance.Meters, "m", nameof(distance));
        return OfMetres(right, up, (Length?)distance);
    }

    /// <summary>Makes a group of shots from one distance with one setting of the sight, called flyers set aside.</summary>
    /// <param name="shots">One shot or more, each with an impact or a miss.</param>
    /// <returns>The group.</returns>
    /// <exception cref="ArgumentException">No shot, a shot with both impact and miss or neither, or shots of several distances or settings.</exception>
    public static Group Of(IEnumerable<Shot> shots)
    {
        Shot[] all = ShotCheck.Checked(shots, nameof(shots));
        Shot first = all[0];
        if (Array.Find(all, s => !ShotCheck.Same(s.Distance, first.Distance)) is { } far)
        {
            throw new ArgumentException(FormattableString.Invariant(
                $"shots must be of one distance; shot {first.Number} was from {first.Distance}, shot {far.Number} from {far.Distance}. StationGroup.From splits a list."),
                nameof(shots));
        }

        if (Array.Find(all, s => !ShotCheck.Same(s.Setting, first.Setting)) is { } moved)
        {
            throw new ArgumentException(
                $"shots must be of one sight setting; the sight moved between shots {first.Number} and {moved.Number}. StationGroup.From splits a list.", nameof(shots));
        }

        Shot[] called = [.. all.Where(s => s.Called)], counted = [.. all.Where(s => !s.Called)];
        return new(all, Struck(counted), Struck(called), Misses(counted), Misses(called), first.Distance);
    }

    /// <summary>Counts the called flyers too.</summary>
    /// <returns>The same arrows with none set aside.</returns>
    public Group WithCalled() => Shots.Count == 0 ? this : new(Shots, Struck(Shots), [], Misses(Shots), 0, Distance);

    /// <summary>Estimates the centre with its confidence regions.</summary>
    /// <param name="level">Level of intervals and regions, between 0 and 1.</param>
    /// <returns>The centre, in the unit of the first impact.</returns>
    /// <exception cref="CannotTellException">Fewer than two counted impacts, all recorded at one height or one place across, or an arrow missed.</exception>
    public Centre Centre(double level)
    {
        Require.Level(level);
        if (Spread.OfLengths([this]).Obstacle(null) is { } obstacle)
        {
            throw obstacle;
        }

        int n = Impacts.Count, nu = 2 * (n - 1);
        double s = Math.Sqrt((Moments.SumRight + Moments.SumUp) / nu);
        var mean = new Impact(InItsUnit(Moments.MeanRight), InItsUnit(Moments.MeanUp));
        // F with 2 and nu degrees of freedom in closed form: radius² = 2 F s² / n.
        var disc = new ConfidenceDisc(mean, InItsUnit(s * Math.Sqrt(2 * Quantiles.FisherTwo(nu, level) / n)), level);
        return new(Centre(Axis.Horizontal, level), Centre(Axis.Vertical, level), disc, ConfidenceEllipse.From(Moments, mean, level, InItsUnit));
    }

    /// <summary>Estimates the centre along one axis.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>Mean, s/√n and Student t interval with n − 1 degrees of freedom, in the unit of the first impact.</returns>
    /// <exception cref="CannotTellException">Fewer than two counted impacts, all recorded at one place of this axis, or an arrow missed.</exception>
    public Estimate<Length> Centre(Axis axis, double level)
    {
        Require.Level(level);
        if (Spread.OfLengths([this]).Obstacle(axis) is { } obstacle)
        {
            throw obstacle;
        }

        int n = Impacts.Count;
        double mean = Moments.MeanOf(axis), error = Math.Sqrt(Moments.SumOf(axis) / (n - 1) / n), half = error * Quantiles.StudentT(n - 1, level);
        return new(InItsUnit(mean), InItsUnit(error), InItsUnit(mean - half), InItsUnit(mean + half), level, n, "mean with Student t interval, normal impacts");
    }

    /// <summary>Estimates how widely the impacts scatter about their own centre.</summary>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <returns>Sigma across, up, and pooled, in the unit of the first impact.</returns>
    /// <exception cref="CannotTellException">Fewer than two counted impacts, all recorded at one height or one place across, or an arrow missed.</exception>
    public Dispersion<Length> Dispersion(double level) => Spread.OfLengths([this]).Dispersion(level, InItsUnit);

    /// <summary>Estimates how widely the impacts scatter along one axis.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>Sigma along the axis, in the unit of the first impact.</returns>
    /// <exception cref="CannotTellException">Fewer than two counted impacts, all recorded at one place of this axis, or an arrow missed.</exception>
    public Sigma<Length> Dispersion(Axis axis, double level) => Spread.OfLengths([this]).Sigma(axis, level, InItsUnit);

    /// <summary>Estimates the dispersion where the shots can tell it.</summary>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <param name="dispersion">The dispersion, when told.</param>
    /// <param name="whyNot">Why it cannot be told, otherwise.</param>
    /// <returns>Whether it can be told.</returns>
    public bool TryDispersion(double level, [NotNullWhen(true)] out Dispersion<Length>? dispersion, [NotNullWhen(false)] out string? whyNot)
    {
        Require.Level(level);
        whyNot = Spread.OfLengths([this]).Obstacle(null)?.Message;
        dispersion = whyNot is null ? Dispersion(level) : null;
        return whyNot is null;
    }

    /// <summary>Estimates the centre where the shots can tell how surely.</summary>
    /// <param name="level">Level of intervals and regions, between 0 and 1.</param>
    /// <param name="centre">The centre, when told.</param>
    /// <param name="whyNot">Why it cannot be told, otherwise.</param>
    /// <returns>Whether it can be told.</returns>
    public bool TryCentre(double level, [NotNullWhen(true)] out Centre? centre, [NotNullWhen(false)] out string? whyNot)
    {
        Require.Level(level);
        whyNot = Spread.OfLengths([this]).Obstacle(null)?.Message;
        centre = whyNot is null ? Centre(level) : null;
        return whyNot is null;
    }

    internal Length InItsUnit(double metres) => Length.FromMeters(metres).ToUnit(unit);

    static Group Of(IEnumerable<Impact> impacts, Length? distance)
    {
        ArgumentNullException.ThrowIfNull(impacts);
        Impact[] all = [.. impacts];
        return all.Length > 0
            ? new([], all, [], 0, 0, distance)
            : throw new ArgumentException("impacts must hold at least one impact; it was empty.", nameof(impacts));
    }

    static Group OfMetres(ReadOnlySpan<double> right, ReadOnlySpan<double> up, Length? distance)
    {
        if (right.Length == 0 || right.Length != up.Length)
        {
            throw new ArgumentException($"right and up must be columns of one length, of one offset or more; they held {right.Length} and {up.Length}.", nameof(up));
        }

        for (int i = 0; i < right.Length; i++)
        {
            if (!double.IsFinite(right[i]) || !double.IsFinite(up[i]))
            {
                throw new ArgumentException(FormattableString.Invariant($"offsets must be finite; row {i} (from 0) was {right[i]} right, {up[i]} up. An arrow that missed has no offset: give shots instead."),
                    double.IsFinite(right[i]) ? nameof(up) : nameof(right));
            }
        }

        return new([], new ImpactColumns(right.ToArray(), up.ToArray()), [], 0, 0, distance);
    }

    static Impact[] Struck(IEnumerable<Shot> shots) => [.. shots.Select(s => s.Impact).OfType<Impact>()];

    static int Misses(IEnumerable<Shot> shots) => shots.Count(s => s.Missed is not null);
}
