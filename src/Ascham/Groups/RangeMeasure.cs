namespace Ascham.Groups;

using Ascham.Quantities;
using UnitsNet;

/// <summary>A way to measure a group with a tape alone.</summary>
public enum RangeKind
{
    /// <summary>Distance between the two impacts farthest apart.</summary>
    ExtremeSpread,

    /// <summary>Diagonal of the upright rectangle around the impacts.</summary>
    Diagonal,

    /// <summary>Figure of merit: mean of width and height.</summary>
    FigureOfMerit,

    /// <summary>Mean distance of the impacts from their centre.</summary>
    MeanRadius,
}

/// <summary>A group measured with a tape: good for the range, and for one conversion into sigma.</summary>
/// <param name="Kind">What was measured.</param>
/// <param name="Value">The measure; not negative.</param>
/// <param name="Arrows">Number of arrows in the group, 2 to 20.</param>
/// <remarks>
/// <para><b>Why only converted.</b> Each of these grows with the number of arrows: ten arrows spread 1.6 times as far as three from the same bow and archer. Two are never comparable unless of one kind and
/// one number of arrows (<see cref="RatioTo"/> refuses otherwise); sigma is. From one ten-arrow group the extreme spread wastes a quarter of the arrows, the mean radius one in fifteen.</para>
/// <para><b>Limits.</b> Conversions hold for round normal groups of 2 to 20 arrows, all counted, none dropped.</para>
/// </remarks>
public sealed record RangeMeasure(RangeKind Kind, Length Value, int Arrows)
{
    /// <summary>Measures a group.</summary>
    /// <param name="group">The group; 2 to 20 counted impacts.</param>
    /// <param name="kind">What to measure.</param>
    /// <returns>The measure, in the unit of the group.</returns>
    /// <exception cref="ArgumentOutOfRangeException">More than 20 impacts: no conversion is known, and sigma says more.</exception>
    /// <exception cref="CannotTellException">Fewer than two counted impacts, or an arrow missed.</exception>
    public static RangeMeasure Of(Group group, RangeKind kind)
    {
        ArgumentNullException.ThrowIfNull(group);
        int n = group.Moments.Count;
        if (group.Missed > 0)
        {
            throw new MissedArrowsException(group.Missed, n);
        }

        if (n < 2)
        {
            throw new CannotTellException($"A group of {n} counted impact{(n == 1 ? "" : "s")} has no extent. Shoot at least two arrows at one aim.");
        }

        RequireArrows(n);
        double[] right = [.. group.Impacts.Select(i => i.Right.Meters)], up = [.. group.Impacts.Select(i => i.Up.Meters)];
        double width = right.Max() - right.Min(), height = up.Max() - up.Min();
        double value = kind switch
        {
            RangeKind.ExtremeSpread => Farthest(right, up),
            RangeKind.Diagonal => double.Hypot(width, height),
            RangeKind.FigureOfMerit => (width + height) / 2,
            RangeKind.MeanRadius => right.Zip(up, (r, u) => double.Hypot(r - group.Moments.MeanRight, u - group.Moments.MeanUp)).Average(),
            _ => throw Unknown(kind),
        };
        return new(kind, group.InItsUnit(value), n);
    }

    /// <summary>Expected measure of a round group.</summary>
    /// <param name="kind">What is measured.</param>
    /// <param name="arrows">Number of arrows, 2 to 20.</param>
    /// <param name="sigma">Sigma per axis; positive.</param>
    /// <returns>Mean over many groups; one group differs from it by the coefficient of variation, half of it at two arrows, a seventh at twenty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static Length Expected(RangeKind kind, int arrows, Length sigma)
    {
        Require.Positive(sigma.Meters, "m");
        return sigma * RangeTable.Of(kind, RequireArrows(arrows)).Mean;
    }

    /// <summary>Converts the measure into sigma per axis.</summary>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>
    /// The measure over its expected value, with an interval that takes the measure as a multiple of chi with degrees of freedom matched to its coefficient of variation
    /// (Patnaik 1950): limits within 2 % of the exact ones for 90 % intervals of the extreme spread, 5 % for 98 %.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The number of arrows is not 2 to 20, the value not positive, or the level not between 0 and 1.</exception>
    public Sigma<Length> ToSigma(double level)
    {
        Require.Level(level);
        Require.Positive(Value.Meters, "m");
        var (mean, variation) = RangeTable.Of(Kind, RequireArrows(Arrows));
        double nu = RangeTable.Degrees(variation), s = Value.Meters / mean * Numerics.Quantiles.C4(nu);
        return Sigma<Length>.From(s, nu, Arrows, level, $"{Name} over its expected value, round normal group", m => Length.FromMeters(m).ToUnit(Value.Unit));
    }

    /// <summary>Compares with another measure of the same kind and the same number of arrows.</summary>
    /// <param name="other">The other.</param>
    /// <returns>This over the other.</returns>
    /// <exception cref="ArgumentException">The kinds or the numbers of arrows differ: convert both into sigma and compare those.</exception>
    public double RatioTo(RangeMeasure other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return other.Kind == Kind && other.Arrows == Arrows
            ? Value / other.Value
            : throw new ArgumentException(
                $"other must be the {Name} of {Arrows} arrows too; it was the {other.Name} of {other.Arrows}. These measures grow with the number of arrows: convert both with ToSigma.", nameof(other));
    }

    string Name => Kind switch
    {
        RangeKind.ExtremeSpread => "extreme spread",
        RangeKind.Diagonal => "diagonal",
        RangeKind.FigureOfMerit => "figure of merit",
        _ => "mean radius",
    };

    internal static ArgumentOutOfRangeException Unknown(RangeKind kind) => new(nameof(kind), kind, "kind must be one of the members of RangeKind.");

    static int RequireArrows(int arrows) => (int)Require.InRange(arrows, 2, 20, "arrows");

    static double Farthest(double[] right, double[] up)
    {
        double farthest = 0;
        for (int i = 0; i < right.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                farthest = Math.Max(farthest, double.Hypot(right[i] - right[j], up[i] - up[j]));
            }
        }

        return farthest;
    }
}
