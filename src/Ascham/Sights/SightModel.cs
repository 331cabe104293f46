namespace Ascham.Sights;

using Ascham.Air;
using Ascham.Flight;
using Ascham.Quantities;
using MathNet.Numerics.RootFinding;
using UnitsNet;

/// <summary>A bow with its sight: where the pin must stand for a distance, and where the arrow strikes when it stands elsewhere.</summary>
/// <remarks>
/// <para><b>Frame.</b> The line of sight runs level from the peep through the pin to the aim point. The arrow's axis passes
/// <see cref="SightGeometry.PeepHeight"/> below the peep and rises towards the line of sight by the sight angle ψ;
/// tan ψ = (pin below peep level) / (peep to pin). The flight starts that height straight below the peep; the foot of the
/// perpendicular on the arrow's axis would give marks up to 0.008 mrad smaller at 100 yd.</para>
/// <para><b>Limits.</b> Level shots in still air; a rigid bow that points where the arrow goes; point-mass flight.</para>
/// <para><b>Accuracy.</b> Marks solve the flight to 1e-9 m on the target. Agrees with the derived table of docs/models/sights.md to its last digit.</para>
/// </remarks>
public sealed record SightModel
{
    const double Tolerance = 1e-10; // m on the target
    const double Steepest = Math.PI / 4; // rad
    const int Iterations = 40;

    /// <summary>Eye, peep, pin and scale.</summary>
    public required SightGeometry Geometry { get; init; }

    /// <summary>Speed of the arrow as it leaves the string.</summary>
    public required Speed LaunchSpeed { get; init; }

    /// <summary>Drag of the arrow.</summary>
    public required Drag Drag { get; init; }

    /// <summary>The air it flies through.</summary>
    public required Air Air { get; init; }

    /// <summary>Local gravity.</summary>
    public required Gravity Gravity { get; init; }

    /// <summary>Finds the angle between line of sight and arrow that hits the aim point.</summary>
    /// <param name="distance">Distance along the line of sight; positive.</param>
    /// <returns>The sight angle ψ; positive.</returns>
    /// <exception cref="OutOfReachException">No angle up to 45 degrees reaches so far.</exception>
    public Angle SightAngle(Length distance) => Angle.FromRadians(AngleFor(distance.Meters, 0));

    /// <summary>Finds how far below peep level the pin must stand to hit the aim point.</summary>
    /// <param name="distance">Distance along the line of sight; positive.</param>
    /// <returns>Height of the peep less that of the pin, at right angles to the arrow.</returns>
    /// <exception cref="OutOfReachException">The distance is out of reach.</exception>
    public Length PinBelowPeep(Length distance) => Geometry.PeepToPin * Math.Tan(AngleFor(distance.Meters, 0));

    /// <summary>Finds where an arrow strikes when the pin stands at a given height.</summary>
    /// <param name="pinBelowPeep">Height of the peep less that of the pin.</param>
    /// <param name="distance">Distance along the line of sight; positive.</param>
    /// <returns>Height above the aim point; negative when low.</returns>
    /// <exception cref="OutOfReachException">The arrow does not fly so far.</exception>
    public Length HeightWithPinAt(Length pinBelowPeep, Length distance) =>
        Length.FromMeters(Height(Math.Atan(pinBelowPeep / Geometry.PeepToPin), Require.Positive(distance.Meters, "m", nameof(distance))).Height);

    /// <summary>Makes the tape of this bow for some distances, slid so that one mark stands where it is given.</summary>
    /// <param name="distances">At least two distances.</param>
    /// <param name="anchor">The mark that fixes where the scale begins.</param>
    /// <returns>The tape.</returns>
    public Tape MakeTape(IEnumerable<Length> distances, Mark anchor)
    {
        ArgumentNullException.ThrowIfNull(distances);
        ArgumentNullException.ThrowIfNull(anchor);
        double start = anchor.Position.Meters - ScaleTravel(anchor.Distance);
        return Tape.Of(distances.Select(d => new Mark(d, Length.FromMeters(start + ScaleTravel(d)))));
    }

    /// <summary>Travel of the scale from pin at peep level to pin at the mark, m; signed as the scale counts.</summary>
    internal double ScaleTravel(Length distance) => ScalePerPin * PinBelowPeep(distance).Meters;

    /// <summary>The setting that would have centred the group of a station, m.</summary>
    internal double CentringPosition(TapeStation station)
    {
        double distance = station.Distance.Meters;
        double moved = Math.Tan(AngleFor(distance, 0)) - Math.Tan(AngleFor(distance, station.MeanUp.Meters));
        return station.Setting.Meters + ScalePerPin * Geometry.PeepToPin.Meters * moved;
    }

    /// <summary>Travel of the scale that lowers the impact to the aim point, per height of the impact above it; negative when larger numbers are lower pins.</summary>
    internal double PositionPerHeight(Length distance)
    {
        double angle = AngleFor(distance.Meters, 0), cos = Math.Cos(angle);
        return -ScalePerPin * Geometry.PeepToPin.Meters / (cos * cos * Height(angle, distance.Meters).Slope);
    }

    /// <summary>Travel of the scale per distance; about zero where the scale turns.</summary>
    internal double PositionPerDistance(Length distance)
    {
        double step = 1e-4 * distance.Meters;
        return (ScaleTravel(Length.FromMeters(distance.Meters + step)) - ScaleTravel(Length.FromMeters(distance.Meters - step))) / (2 * step);
    }

    /// <summary>
    /// How the measured error of a station's mark follows an error of its distance, per metre: a farther butt needs another mark, and the same height on it is
    /// another angle. On a dialled station only the first counts; with a drop to read, both.
    /// </summary>
    internal double ErrorPerDistance(TapeStation station)
    {
        double step = 1e-4 * station.Distance.Meters;
        double At(double shift)
        {
            var moved = station with { Distance = Length.FromMeters(station.Distance.Meters + shift) };
            return CentringPosition(moved) - ScaleTravel(moved.Distance);
        }

        return (At(step) - At(-step)) / (2 * step);
    }

    /// <summary>The distance that a travel of the scale belongs to, m, beyond the short range where the scale turns; NaN when none does.</summary>
    internal double DistanceFor(double travel, double near)
    {
        double turn = LaunchSpeed.MetersPerSecond * Math.Sqrt(Math.Max(0, 2 * Geometry.PeepHeight.Meters / Gravity.Si));
        double Missing(double metres) => (ScaleTravel(Length.FromMeters(metres)) - travel) / ScalePerPin;
        double low = Math.Max(turn, 0.2 * near), high = 2 * near + turn;
        return Missing(low) < 0 && Missing(high) > 0 ? Brent.FindRoot(Missing, low, high, 1e-9) : double.NaN;
    }

    internal double DragConstantSi => Drag.PerMetreIn(Air);

    internal SightModel WithSpeed(double metresPerSecond) => this with { LaunchSpeed = Speed.FromMetersPerSecond(metresPerSecond) };

    internal SightModel WithDragConstant(double perMetre) => this with { Drag = Drag.FromFit(perMetre) };

    /// <summary>How far the pin goes down when the scale moves.</summary>
    internal Length PinTravel(Length scale) => scale / ScalePerPin;

    double ScalePerPin => Geometry.Increases == ScaleDirection.Down ? Geometry.TapePerPinTravel : -Geometry.TapePerPinTravel;

    /// <summary>The sight angle whose arrow strikes at a height, rad, by Newton's method.</summary>
    double AngleFor(double distance, double height)
    {
        Require.Positive(distance, "m");
        double angle = Math.Atan2(Geometry.PeepHeight.Meters + height, distance);
        for (int i = 0; i < Iterations && Math.Abs(angle) < Steepest; i++)
        {
            var (reached, slope) = Height(angle, distance);
            angle -= (reached - height) / slope;
            if (Math.Abs(reached - height) < Tolerance)
            {
                return angle;
            }
        }

        throw TooFar(distance);
    }

    /// <summary>Height above the line of sight at a distance, m, and its derivative by the sight angle, m/rad.</summary>
    (double Height, double Slope) Height(double angle, double distance)
    {
        var launch = new LaunchSi(LaunchSpeed.MetersPerSecond, angle, 0, 0, -Geometry.PeepHeight.Meters);
        return Flight.FlyWithSlope(launch, distance, 0, out _, out double above, out double perElevation) == Outcome.Met
            ? (above, perElevation)
            : throw TooFar(distance);
    }

    PointMassSi Flight => PointMassSi.Of(Drag, Air, Gravity.Si);

    OutOfReachException TooFar(double distance)
    {
        // The level range at 40 degrees is within 1 % of the greatest for an arrow's drag.
        var launch = new LaunchSi(LaunchSpeed.MetersPerSecond, 40 * Math.PI / 180);
        double low = 0, high = LaunchSpeed.MetersPerSecond * LaunchSpeed.MetersPerSecond / Gravity.Si;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            bool lands = Flight.Fly(launch, middle, 0, out var state, out _) == Outcome.Met && state.Y >= 0;
            (low, high) = lands ? (middle, high) : (low, middle);
        }

        return new(Length.FromMeters(distance), Length.FromMeters(low), Angle.Zero);
    }
}
