namespace Ascham.Notebooks;

using System.Globalization;
using Ascham.Arrows;
using Ascham.Bows;
using Ascham.Quantities;
using Ascham.Records;
using UnitsNet;

/// <remarks>What is not exactly known of it.</remarks>
public sealed partial record ArrowTrial
{
    const double VaneLow = 0.6, VaneHigh = 1;         // share of free-stream lift: docs/models/attack.md
    const double Uniform = 3.4641016151377544;        // √12: width of a uniform range over its standard deviation
    const double SpineReading = 0.02;                 // of the sag; common practice, no source

    /// <summary>A bow's virtual mass, the first of: the range given; the one the setup states; the fit to its chronographed arrows; the usual one of its kind.</summary>
    /// <param name="setup">The setup.</param>
    /// <param name="given">Between which ends it lies, all alike likely; <see langword="null"/> to look into the setup.</param>
    /// <param name="level">Of the interval, between 0 and 1.</param>
    /// <returns>The virtual mass; how it was obtained is in words, with warnings.</returns>
    /// <exception cref="ArgumentException">The ends do not rise from zero or more, or nothing tells the virtual mass.</exception>
    /// <exception cref="VirtualMassUnknownException">The chronographed arrows do not tell it.</exception>
    public static Estimate<Mass> VirtualMassOf(Setup setup, (Mass Low, Mass High)? given, double level)
    {
        ArgumentNullException.ThrowIfNull(setup);
        if (given is { } ends)
        {
            return ends.Low >= Mass.Zero && ends.High > ends.Low
                ? new((ends.Low + ends.High) / 2, (ends.High - ends.Low) / Uniform, ends.Low, ends.High, level, 0, "given as a range, all of it alike likely")
                : throw new ArgumentException("The ends of the virtual mass must rise from zero or more.", nameof(given));
        }

        return setup.Bow.Kind is null && setup.Bow.VirtualMass is null && setup.Bow.ArrowSpeeds is null
            ? throw new ArgumentException($"The virtual mass of the bow \"{setup.Name}\" cannot be told. Write bow.kind in the setup (compound, recurve, longbow), or what was measured (bow.virtual_mass, bow.chronographed); or give the parameter virtualMass, such as \"60 gr to 95 gr\".", nameof(setup))
            : LaunchModel.VirtualMassOf(setup.Bow, level);
    }

    /// <summary>The unknowns behind every interval.</summary>
    /// <param name="virtualMass">The bow's virtual mass, as <see cref="VirtualMassOf"/> finds it.</param>
    /// <param name="weighing">Standard deviation of a weighing.</param>
    /// <param name="tapeMeasure">Standard deviation of a place along the arrow.</param>
    /// <returns>The unknowns, independent of one another.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A standard deviation is negative, or the virtual mass is not known to be positive by one of them.</exception>
    public IReadOnlyList<Unknown<ArrowTrial>> Unknowns(Estimate<Mass> virtualMass, Mass weighing, Length tapeMeasure)
    {
        ArgumentNullException.ThrowIfNull(virtualMass);
        if (!(virtualMass.StandardError >= Mass.Zero && virtualMass.Value >= virtualMass.StandardError && weighing >= Mass.Zero && tapeMeasure >= Length.Zero))
        {
            throw new ArgumentOutOfRangeException(nameof(virtualMass), virtualMass, "The virtual mass must be at least its own standard deviation, and standard deviations must not be negative.");
        }

        var speed = Setup.Bow.LaunchSpeedSd ?? 0.01 * LaunchSpeed;
        double drag = Setup.Arrow.DragConstant is null && Setup.Arrow.DragArea is null ? 0.33 : 0.10;
        Mass carried = virtualMass.StandardError;
        double vanes = (VaneHigh - VaneLow) / Uniform;
        string scale = NumberText.Unit(Setup.Arrow.Mass.Unit);
        double As(Mass mass) => mass.As(Setup.Arrow.Mass.Unit);
        return
        [
            new("launch speed", $"{Say(LaunchSpeed)} ± {Say(speed)}" + (Setup.Bow.LaunchSpeedSd is null ? ", 1 % taken: the setup does not say" : ""),
                (t, z) => t with { LaunchSpeed = t.LaunchSpeed + z * speed }),
            new("drag", $"± {100 * drag:0} %, taken: the setup does not say how well it is known", (t, z) => t with { Drag = t.Drag.Times(1 + z * drag) }),
            new("virtual mass of the bow", string.Create(CultureInfo.InvariantCulture, $"{As(virtualMass.Value):0.#} ± {As(carried):0.#} {scale}, {virtualMass.HowObtained}"), (t, z) => t with { VirtualMass = t.VirtualMass + z * carried }),
            new("lift of the vanes", "60 to 100 % of the free-stream lift", (t, z) => t with { VaneShare = t.VaneShare + Ratio.FromDecimalFractions(z * vanes) }),
            new("lift of the shaft at the vanes", "from none to all that slender-body theory gives", (t, z) => t with { CarryOver = z < 0 ? CarryOver.None : CarryOver.OntoVanesAndShaft }),
            new("balance point", $"± {Say(tapeMeasure)}", (t, z) => t with { Build = t.Build with { MeasuredBalance = t.Build.BalancePoint + z * tapeMeasure } }),
            new("scale, on the change", $"± {Say(weighing)}", (t, z) => t with { WeighingError = z * weighing }),
            new("spine reading", $"± {100 * SpineReading:0} %", (t, z) => t with { Spine = StaticSpine.FromDeflection(t.Spine.Deflection * (1 + z * SpineReading)) }),
        ];
    }

    static string Say(IQuantity quantity) => NumberText.With(NumberText.Plain(quantity.As(quantity.Unit)), NumberText.Unit(quantity.Unit));
}
