namespace Ascham.Groups;

using Ascham.Quantities;
using UnitsNet;

/// <summary>How a shift of the impacts grows with distance.</summary>
public enum ShiftKind
{
    /// <summary>The same length at all distances: the whole arrow moved sideways, such as a rest or a peep shifted with the sight.</summary>
    Constant,

    /// <summary>In proportion to the distance: an angle, such as sight, nock or rest.</summary>
    WithDistance,

    /// <summary>With the square of the distance: a small change of speed or drop.</summary>
    WithSquare,
}

/// <summary>A shift one would like to be able to show, and the arrows and distance it takes.</summary>
/// <param name="Size">Its size on the face; positive.</param>
/// <param name="From">The distance at which it has that size; positive.</param>
/// <param name="Kind">How it grows with distance.</param>
/// <remarks>
/// <para>Scatter grows with distance too. So a constant shift shows best close up, an angle equally well anywhere, a change of drop far out: shoot there,
/// within the setup's longest safe distance.</para>
/// <para><b>Model.</b> <see cref="ShiftPower"/> with sigma on the face = √((angle · distance)² + reading²), where the reading error is the floor under it:
/// holes that merge, a coarse ruler.</para>
/// <para><b>Limits.</b> One angular sigma at all distances; measured sigma usually grows somewhat more.</para>
/// </remarks>
public sealed record PlannedShift(Length Size, Length From, ShiftKind Kind)
{
    /// <summary>Size of the shift at another distance.</summary>
    /// <param name="distance">The distance; positive.</param>
    /// <returns>The shift, in the unit of <see cref="Size"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A length is not positive.</exception>
    public Length At(Length distance)
    {
        Require.Positive(Size.Meters, "m", nameof(Size));
        double ratio = Require.Positive(distance.Meters, "m", nameof(distance)) / Require.Positive(From.Meters, "m", nameof(From));
        return Kind switch
        {
            ShiftKind.Constant => Size,
            ShiftKind.WithDistance => Size * ratio,
            ShiftKind.WithSquare => Size * ratio * ratio,
            _ => throw new InvalidOperationException($"Kind must be one of the named ones; it was {(int)Kind}."),
        };
    }

    /// <summary>Size of the shift over the sigma on the face.</summary>
    /// <param name="distance">The distance; positive.</param>
    /// <param name="sigma">Sigma per axis as an angle; positive.</param>
    /// <param name="reading">Standard deviation of reading one impact off the face, per axis; zero when impacts are read without error.</param>
    /// <returns>The ratio that power depends on.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public double InSigmas(Length distance, Angle sigma, Length reading)
    {
        double shift = At(distance).Meters, scatter = Require.Positive(sigma.Radians, "rad", nameof(sigma)) * distance.Meters;
        return shift / double.Hypot(scatter, Require.NotNegative(reading.Meters, "m", nameof(reading)));
    }

    /// <summary>Fewest arrows in each of two groups that show the shift at a distance.</summary>
    /// <param name="distance">The distance; positive.</param>
    /// <param name="sigma">Sigma per axis as an angle; positive.</param>
    /// <param name="reading">Standard deviation of reading one impact off the face, per axis; zero or more.</param>
    /// <param name="test">How the groups are compared.</param>
    /// <param name="falseAlarm">Probability of being told of a shift when there is none, between 0 and 1.</param>
    /// <param name="power">Probability of being told of the shift when it is there, between 0 and 1.</param>
    /// <returns>The number of arrows in each group; null above <see cref="ShiftPower.MostArrows"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public int? Arrows(Length distance, Angle sigma, Length reading, ShiftTest test, double falseAlarm, double power) =>
        ShiftPower.Arrows(InSigmas(distance, sigma, reading), test, falseAlarm, power);

    /// <summary>Probability of showing the shift with a number of arrows at a distance.</summary>
    /// <param name="arrows">Arrows in each group; 2 or more.</param>
    /// <param name="distance">The distance; positive.</param>
    /// <param name="sigma">Sigma per axis as an angle; positive.</param>
    /// <param name="reading">Standard deviation of reading one impact off the face, per axis; zero or more.</param>
    /// <param name="test">How the groups are compared.</param>
    /// <param name="falseAlarm">Probability of being told of a shift when there is none, between 0 and 1.</param>
    /// <returns>The power.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public double Power(int arrows, Length distance, Angle sigma, Length reading, ShiftTest test, double falseAlarm) =>
        ShiftPower.Of(arrows, InSigmas(distance, sigma, reading), test, falseAlarm);

    /// <summary>The distance, among those one can shoot, where fewest arrows show the shift.</summary>
    /// <param name="nearest">Nearest distance that can be shot; positive.</param>
    /// <param name="farthest">Longest safe distance; not nearer than <paramref name="nearest"/>.</param>
    /// <param name="sigma">Sigma per axis as an angle; positive.</param>
    /// <param name="reading">Standard deviation of reading one impact off the face, per axis; zero or more.</param>
    /// <returns>The distance; null when it makes no difference, as for an angle read without error.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public Length? BestDistance(Length nearest, Length farthest, Angle sigma, Length reading)
    {
        Require.InRange(nearest.Meters, double.Epsilon, farthest.Meters, "m", nameof(nearest));
        // Power rises or falls with distance all the way: the reading floor bends the curve but turns it nowhere.
        double near = InSigmas(nearest, sigma, reading), far = InSigmas(farthest, sigma, reading);
        return Math.Abs(near - far) <= 1e-9 * near ? null : near > far ? nearest : farthest;
    }
}
