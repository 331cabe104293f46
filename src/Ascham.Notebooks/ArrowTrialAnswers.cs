namespace Ascham.Notebooks;

using Ascham.Air;
using Ascham.Arrows;
using Ascham.Flight;
using Ascham.Sights;
using UnitsNet;

/// <remarks>What is asked of the arrow.</remarks>
public sealed partial record ArrowTrial
{
    const double Crossflow = 1.15;   // between Hoerner's 1.1 and Jorgensen's 1.2

    /// <summary>The bow with its sight.</summary>
    public SightModel Sight => new() { Geometry = Setup.Sight, LaunchSpeed = LaunchSpeed, Drag = Drag, Air = Air, Gravity = Gravity.Standard };

    /// <summary>What turns the arrow into the wind.</summary>
    public Stability Stability => Build.StabilityWith(Diameter, Tip, Setup.FletchingWith(VaneShare), CarryOver, Crossflow);

    /// <summary>The arrow as a body that swings, in still air.</summary>
    public RigidBody Body => new()
    {
        Stability = Stability,
        Mass = Build.Mass,
        TransverseInertia = Build.TransverseInertia,
        AxialInertia = MassMomentOfInertia.FromKilogramSquareMeters(Build.Mass.Kilograms * 0.25 * Diameter.Meters * Diameter.Meters),
        Drag = Drag,
        Air = Air,
        Gravity = Gravity.Standard,
        Wind = Wind.Calm,
    };

    /// <summary>How far the centre of pressure lies behind the balance point, over the standard length of the arrow; negative when unstable.</summary>
    public Ratio StaticMargin => Ratio.FromDecimalFractions(Stability.Margin / Build.Length);

    /// <summary>Centre of pressure at small angles, from the bottom of the nock slot.</summary>
    public Length CentreOfPressure => Build.BalancePoint - Stability.Margin;

    /// <summary>The lowest bending modes.</summary>
    public ArrowFlexure Flexure => ArrowFlexure.Of(Build, Spine);

    /// <summary>How hard the launch presses on the shaft: peak weight over arrow and virtual mass, as a relative index.</summary>
    public ColumnLoad ColumnLoad => ColumnLoad.Of(Build, Spine, Setup.Bow.PeakWeight / (Build.Mass + VirtualMass));

    /// <summary>Where this arrow strikes when the sight stands where another arrow hits.</summary>
    /// <param name="other">The arrow the sight is set for.</param>
    /// <param name="distance">Along the line of sight.</param>
    /// <returns>Above the aim point positive.</returns>
    public Length StrikeWithSightOf(ArrowTrial other, Length distance)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Sight.HeightWithPinAt(other.Sight.PinBelowPeep(distance), distance);
    }

    /// <summary>How far the mark of a distance moves on the scale when another arrow was shot before.</summary>
    /// <param name="other">The arrow of the old mark.</param>
    /// <param name="distance">Along the line of sight.</param>
    /// <returns>Towards larger numbers positive.</returns>
    public Length MarkTravelFrom(ArrowTrial other, Length distance)
    {
        ArgumentNullException.ThrowIfNull(other);
        double scale = Setup.Sight.TapePerPinTravel * (Setup.Sight.Increases == ScaleDirection.Down ? 1 : -1);
        return scale * (Sight.PinBelowPeep(distance) - other.Sight.PinBelowPeep(distance));
    }

    /// <summary>How far a steady wind square to the flight carries the arrow, released straight and turning into the wind as it flies.</summary>
    /// <param name="acrossFromLeft">The wind; from the left positive.</param>
    /// <param name="distance">Level.</param>
    /// <returns>To the right positive; <see langword="null"/> when the arrow does not get there without tumbling.</returns>
    public Length? Drift(Speed acrossFromLeft, Length distance) =>
        (Body with { Wind = Wind.Of(Speed.Zero, acrossFromLeft) }).TryAt(new() { Launch = Aimed(distance) }, distance, out RigidState state) ? state.Flight.Right : null;

    /// <summary>The same for a point mass, which points into the wind from the start.</summary>
    /// <param name="acrossFromLeft">The wind; from the left positive.</param>
    /// <param name="distance">Level.</param>
    /// <returns>To the right positive.</returns>
    public Length DriftAsPointMass(Speed acrossFromLeft, Length distance) => Flown(Wind.Of(Speed.Zero, acrossFromLeft), distance).Right;

    /// <summary>Kinetic energy at a distance.</summary>
    /// <param name="distance">Level; zero for the launch.</param>
    /// <returns>½ m v².</returns>
    public Energy EnergyAt(Length distance)
    {
        double v = Flown(Wind.Calm, distance).Speed.MetersPerSecond;
        return Energy.FromJoules(0.5 * Build.Mass.Kilograms * v * v);
    }

    /// <summary>Momentum at a distance, kg m/s.</summary>
    /// <param name="distance">Level; zero for the launch.</param>
    /// <returns>m v.</returns>
    public double MomentumAt(Length distance) => Build.Mass.Kilograms * Flown(Wind.Calm, distance).Speed.MetersPerSecond;

    /// <summary>From which distance on the arrow stays within an angle of its path after leaving at a larger one, by flying it.</summary>
    /// <param name="release">Nose to the side as it leaves.</param>
    /// <param name="within">The smaller angle.</param>
    /// <returns><see langword="null"/> when that is not seen within 200 yd.</returns>
    public Length? SettledFrom(Angle release, Angle within) =>
        Body.SettledFrom(new() { Launch = new() { Speed = LaunchSpeed, Elevation = Angle.Zero }, Yaw = release }, within, Length.FromYards(200));

    FlightState Flown(Wind wind, Length distance) =>
        new PointMass { Drag = Drag, Air = Air, Gravity = Gravity.Standard, Wind = wind }.At(Aimed(distance), distance);

    Launch Aimed(Length distance) => new() { Speed = LaunchSpeed, Elevation = distance > Length.Zero ? Sight.SightAngle(distance) : Angle.Zero };

    Length Diameter => Setup.Arrow.ShaftDiameter!.Value;

    // A point given without length is taken to lift at its place.
    LiftingPart Tip => Build.Point.Length > Length.Zero
        ? LiftingPart.ConePoint(Build.Point.Length, Diameter)
        : LiftingPart.Of("point", Area.FromSquareMeters(0.5 * Math.PI * Diameter.Meters * Diameter.Meters), Length.Zero);
}
