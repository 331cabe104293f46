namespace Ascham.Notebooks;

using System.Globalization;
using Ascham.Air;
using Ascham.Arrows;
using Ascham.Bows;
using Ascham.Flight;
using Ascham.Sights;
using UnitsNet;

/// <remarks>What is asked of it, and what is not exactly known.</remarks>
public sealed partial record WeightTrial
{
    /// <summary>Arrow, weight and draw length, as the bow scale reads it.</summary>
    public Loading Loading => Model.Known with { PeakWeight = PeakWeight };

    /// <summary>Speed as the arrow leaves.</summary>
    public Speed LaunchSpeed => Model.SpeedAt(Loading, 0.90).Value * Math.Pow(PeakWeight / Model.Known.PeakWeight, 0.5 * (WeightPower - 1));

    /// <summary>Arrow mass per true peak weight, grains per pound-force.</summary>
    public double GrainsPerPound => Loading.GrainsPerPound / (1 + ScaleOff.DecimalFractions);

    /// <summary>Energy of the arrow as it leaves.</summary>
    public Energy Energy => MovingArrow.KineticEnergy(Model.Known.ArrowMass, LaunchSpeed);

    /// <summary>Its momentum.</summary>
    public Impulse Momentum => MovingArrow.Momentum(Model.Known.ArrowMass, LaunchSpeed);

    /// <summary>Energy that arrow and virtual mass take together.</summary>
    public Energy LaunchEnergy => MovingArrow.KineticEnergy(Model.Known.ArrowMass + Model.VirtualMass, LaunchSpeed);

    /// <summary>How hard the launch presses on the shaft, a relative index; <see langword="null"/> without parts and spine of the arrow.</summary>
    public ColumnLoad? ColumnLoad => Spine is { } spine && Setup.ArrowBuild is { } build
        ? ColumnLoad.Of(build, spine, (1 + ScaleOff.DecimalFractions) * Model.PeakAcceleration(Loading, 0.90).Value)
        : null;

    /// <summary>The bow with its sight.</summary>
    public SightModel Sight => new() { Geometry = Setup.Sight, LaunchSpeed = LaunchSpeed, Drag = Drag, Air = Air, Gravity = Gravity.Standard };

    /// <summary>Where the arrow strikes when the sight stands where it hit at another weight.</summary>
    /// <param name="other">The bow the sight is set for.</param>
    /// <param name="distance">Along the line of sight.</param>
    /// <returns>Above the aim point positive.</returns>
    /// <exception cref="OutOfReachException">The distance is out of reach.</exception>
    public Length StrikeWithSightOf(WeightTrial other, Length distance)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Sight.HeightWithPinAt(other.Sight.PinBelowPeep(distance), distance);
    }

    /// <summary>How far the mark of a distance moves on the scale against the old one.</summary>
    /// <param name="other">The bow of the old mark.</param>
    /// <param name="distance">Along the line of sight.</param>
    /// <returns>Towards larger numbers positive.</returns>
    /// <exception cref="OutOfReachException">The distance is out of reach.</exception>
    public Length MarkTravelFrom(WeightTrial other, Length distance)
    {
        ArgumentNullException.ThrowIfNull(other);
        double scale = Setup.Sight.TapePerPinTravel * (Setup.Sight.Increases == ScaleDirection.Down ? 1 : -1);
        return scale * (Sight.PinBelowPeep(distance) - other.Sight.PinBelowPeep(distance));
    }

    /// <summary>Whether the arrow flies so far at all.</summary>
    /// <param name="distance">Along the line of sight.</param>
    /// <returns><see langword="false"/> when no angle up to 45 degrees gets there.</returns>
    public bool Reaches(Length distance)
    {
        try
        {
            return Sight.SightAngle(distance) > Angle.Zero;
        }
        catch (OutOfReachException)
        {
            return false;
        }
    }

    /// <summary>The unknowns behind every interval.</summary>
    /// <param name="perTurn">Standard deviation of the weight lost per turn.</param>
    /// <param name="bowScale">Standard deviation of the bow scale as a whole.</param>
    /// <returns>The unknowns, independent of one another.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A standard deviation is negative.</exception>
    public IReadOnlyList<Unknown<WeightTrial>> Unknowns(Force perTurn, Ratio bowScale)
    {
        if (!(perTurn >= Force.Zero && bowScale >= Ratio.Zero))
        {
            throw new ArgumentOutOfRangeException(nameof(perTurn), perTurn, "Standard deviations must not be negative.");
        }

        const double SpineReading = 0.02; // of the sag; common practice, no source
        double drag = Setup.Arrow.DragConstant is null && Setup.Arrow.DragArea is null ? 0.33 : 0.10;
        string kept = string.Create(CultureInfo.InvariantCulture, $"{Say(Model.VirtualMass.ToUnit(Setup.Arrow.Mass.Unit))} ± {Say(Model.VirtualMassSd.ToUnit(Setup.Arrow.Mass.Unit))}, {Model.HowObtained[(Model.HowObtained.IndexOf(';') + 1)..].Trim()}");
        List<Unknown<WeightTrial>> all =
        [
            new("launch speed", $"{Say(Model.KnownSpeed)} ± {Say(Model.KnownSpeedSd)}", (t, z) => t with { Model = t.Model with { KnownSpeed = t.Model.KnownSpeed + z * t.Model.KnownSpeedSd } }),
            new("how energy follows weight", string.Create(CultureInfo.InvariantCulture, $"to the power 1 ± {LaunchModel.WeightPowerSd} (judged, no source)"), (t, z) => t with { WeightPower = t.WeightPower + z * LaunchModel.WeightPowerSd }),
            new("drag", $"± {100 * drag:0} %, taken: the setup does not say how well it is known", (t, z) => t with { Drag = t.Drag.Times(1 + z * drag) }),
            new("virtual mass of the bow", kept, (t, z) => t with { Model = t.Model with { VirtualMass = AtLeastNone(t.Model.VirtualMass + z * t.Model.VirtualMassSd) } }),
            new("bow scale as a whole", string.Create(CultureInfo.InvariantCulture, $"± {bowScale.Percent:0.##} %"), (t, z) => t with { ScaleOff = t.ScaleOff + z * bowScale }),
        ];
        if (Bolts is { } bolts)
        {
            all.Add(new("weight per turn", $"{Say(bolts.WeightPerTurn)} ± {Say(perTurn)}", (t, z) => t with { Bolts = t.Bolts! with { WeightPerTurn = t.Bolts.WeightPerTurn + z * perTurn } }));
        }

        if (Spine is not null)
        {
            all.Add(new("spine reading", $"± {100 * SpineReading:0} %", (t, z) => t with { Spine = StaticSpine.FromDeflection(t.Spine!.Deflection * (1 + z * SpineReading)) }));
        }

        return all;
    }

    static Mass AtLeastNone(Mass mass) => mass > Mass.Zero ? mass : Mass.Zero;

    static string Say(IQuantity quantity) => NumberText.With(NumberText.Plain(quantity.As(quantity.Unit)), NumberText.Unit(quantity.Unit));
}
