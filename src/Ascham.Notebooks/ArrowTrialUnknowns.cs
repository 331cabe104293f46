namespace Ascham.Notebooks;

using System.Globalization;
using Ascham.Arrows;
using UnitsNet;

/// <remarks>What is not exactly known of it.</remarks>
public sealed partial record ArrowTrial
{
    const double LeastKept = 0.65, MostKept = 0.90;   // share of the energy that the arrow gets; common practice, no source
    const double VaneLow = 0.6, VaneHigh = 1;         // share of free-stream lift: docs/models/attack.md
    const double SpineReading = 0.02;                 // of the sag; common practice, no source

    /// <summary>The range of a bow's virtual mass when nobody measured it: the arrow gets 65 to 90 % of the energy.</summary>
    /// <param name="arrow">Mass of the arrow that is shot.</param>
    /// <returns>m (1 - η)/η at both ends; compounds lie nearer the lower end, longbows at the upper.</returns>
    public static (Mass Low, Mass High) UsualVirtualMass(Mass arrow) => (arrow * (1 - MostKept) / MostKept, arrow * (1 - LeastKept) / LeastKept);

    /// <summary>The unknowns behind every interval.</summary>
    /// <param name="virtualMass">Between which ends the bow's virtual mass lies, all alike likely.</param>
    /// <param name="weighing">Standard deviation of a weighing.</param>
    /// <param name="tapeMeasure">Standard deviation of a place along the arrow.</param>
    /// <returns>The unknowns, independent of one another.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A standard deviation is negative, or the ends are in the wrong order.</exception>
    public IReadOnlyList<Unknown<ArrowTrial>> Unknowns((Mass Low, Mass High) virtualMass, Mass weighing, Length tapeMeasure)
    {
        if (!(virtualMass.Low >= Mass.Zero && virtualMass.High > virtualMass.Low && weighing >= Mass.Zero && tapeMeasure >= Length.Zero))
        {
            throw new ArgumentOutOfRangeException(nameof(virtualMass), virtualMass, "The ends of the virtual mass must rise from zero or more, and standard deviations must not be negative.");
        }

        const double uniform = 3.4641016151377544;   // √12: width of a uniform range over its standard deviation
        var speed = Setup.Bow.LaunchSpeedSd ?? 0.01 * LaunchSpeed;
        double drag = Setup.Arrow.DragConstant is null && Setup.Arrow.DragArea is null ? 0.33 : 0.10;
        Mass carried = (virtualMass.High - virtualMass.Low) / uniform;
        double vanes = (VaneHigh - VaneLow) / uniform;
        string scale = NumberText.Unit(Setup.Arrow.Mass.Unit);
        double As(Mass mass) => mass.As(Setup.Arrow.Mass.Unit);
        return
        [
            new("launch speed", $"{Say(LaunchSpeed)} ± {Say(speed)}" + (Setup.Bow.LaunchSpeedSd is null ? ", 1 % taken: the setup does not say" : ""),
                (t, z) => t with { LaunchSpeed = t.LaunchSpeed + z * speed }),
            new("drag", $"± {100 * drag:0} %, taken: the setup does not say how well it is known", (t, z) => t with { Drag = t.Drag.Times(1 + z * drag) }),
            new("virtual mass of the bow", string.Create(CultureInfo.InvariantCulture, $"{As(virtualMass.Low):0.#} to {As(virtualMass.High):0.#} {scale}"), (t, z) => t with { VirtualMass = t.VirtualMass + z * carried }),
            new("lift of the vanes", "60 to 100 % of the free-stream lift", (t, z) => t with { VaneShare = t.VaneShare + Ratio.FromDecimalFractions(z * vanes) }),
            new("lift of the shaft at the vanes", "from none to all that slender-body theory gives", (t, z) => t with { CarryOver = z < 0 ? CarryOver.None : CarryOver.OntoVanesAndShaft }),
            new("balance point", $"± {Say(tapeMeasure)}", (t, z) => t with { Build = t.Build with { MeasuredBalance = t.Build.BalancePoint + z * tapeMeasure } }),
            new("scale, on the change", $"± {Say(weighing)}", (t, z) => t with { WeighingError = z * weighing }),
            new("spine reading", $"± {100 * SpineReading:0} %", (t, z) => t with { Spine = StaticSpine.FromDeflection(t.Spine.Deflection * (1 + z * SpineReading)) }),
        ];
    }

    static string Say(IQuantity quantity) => NumberText.With(NumberText.Plain(quantity.As(quantity.Unit)), NumberText.Unit(quantity.Unit));
}
