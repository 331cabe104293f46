namespace Ascham.Bows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>A measured speed beside the one the energy model expects.</summary>
/// <remarks>
/// The difference takes the half-widths of both intervals, side by side (recovery of variances: G. Y. Zou, A. Donner, Statistics in Medicine 27
/// (2008) 1693-1702, from memory), so both must have one level. Measured and expected must not share their readings.
/// </remarks>
/// <param name="Difference">Measured less expected.</param>
/// <param name="Disagrees">Whether the interval of the difference leaves out zero: more than the errors explain, at the level of the interval.</param>
public sealed record SpeedCheck(Estimate<Speed> Difference, bool Disagrees)
{
    /// <summary>Holds a measured speed against an expected one.</summary>
    /// <param name="measured">At the launch, with its interval.</param>
    /// <param name="expected">From the model, at the same arrow mass, peak weight and draw length.</param>
    /// <returns>The difference and whether it is more than the errors explain.</returns>
    /// <exception cref="ArgumentException">The intervals have different levels.</exception>
    public static SpeedCheck Of(Estimate<Speed> measured, Estimate<Speed> expected)
    {
        ArgumentNullException.ThrowIfNull(measured);
        ArgumentNullException.ThrowIfNull(expected);
        if (measured.Level != expected.Level)
        {
            throw new ArgumentException(FormattableString.Invariant($"Both intervals must have one level; they have {measured.Level} and {expected.Level}."), nameof(expected));
        }

        static double Si(Speed s) => s.MetersPerSecond;
        static double Both(Speed a, Speed b) => Math.Sqrt(Si(a) * Si(a) + Si(b) * Si(b));
        double difference = Si(measured.Value - expected.Value);
        double low = difference - Both(measured.Value - measured.Low, expected.High - expected.Value);
        double high = difference + Both(measured.High - measured.Value, expected.Value - expected.Low);
        var estimate = new Estimate<double>(difference, Both(measured.StandardError, expected.StandardError), low, high, measured.Level, measured.Count, "measured less expected speed");
        return new(estimate.Map(v => Speed.FromMetersPerSecond(v)), low > 0 || high < 0);
    }

    /// <summary>The finding in a sentence, with what to look at.</summary>
    public string Text
    {
        get
        {
            string size = FormattableString.Invariant($"{Math.Abs(Difference.Value.FeetPerSecond):0.0} ft/s ({Math.Abs(Difference.Value.MetersPerSecond):0.00} m/s)");
            return !Disagrees ? $"The reading is {size} {Side} what the energy model expects, which the errors explain."
                : $"The reading is {size} {Side} what the energy model expects, more than the errors explain: check the arrow's mass, the distance and the light of the chronograph, and the peak weight, before believing either.";
        }
    }

    string Side => Difference.Value < Speed.Zero ? "below" : "above";
}
