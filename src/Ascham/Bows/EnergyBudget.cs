namespace Ascham.Bows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Where the stored energy goes: what arrow and virtual mass take, beside what the draw curve stores.</summary>
/// <param name="LaunchedShare">Launch energy over stored energy; what is missing is hysteresis and what ends as sound and shaking at once.</param>
/// <param name="IsImpossible">Whether more is launched than stored, beyond the errors: draw curve and chronograph cannot both be right.</param>
public sealed record EnergyBudget(Estimate<Ratio> LaunchedShare, bool IsImpossible)
{
    /// <summary>Holds the launch energy against the stored energy.</summary>
    /// <remarks>The ratio's interval joins the halves of both (Zou and Donner 2008, in logarithms). Both must be of one bow setting.</remarks>
    /// <param name="launched">½ (m + K) v², as of <see cref="VirtualMassFit.LaunchEnergy"/>; positive.</param>
    /// <param name="stored">Area under the draw curve to the same full draw; positive.</param>
    /// <returns>The share and whether it can be.</returns>
    /// <exception cref="ArgumentException">The intervals have different levels.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An energy, or the lower end of its interval, is not positive.</exception>
    public static EnergyBudget Of(Estimate<Energy> launched, Estimate<Energy> stored)
    {
        ArgumentNullException.ThrowIfNull(launched);
        ArgumentNullException.ThrowIfNull(stored);
        if (launched.Level != stored.Level)
        {
            throw new ArgumentException(FormattableString.Invariant($"Both intervals must have one level; they have {launched.Level} and {stored.Level}."), nameof(stored));
        }

        Require.Positive(launched.Low.Joules, "J", nameof(launched));
        Require.Positive(stored.Low.Joules, "J", nameof(stored));
        double share = launched.Value / stored.Value;
        double down = Math.Exp(-Norm(Math.Log(launched.Value / launched.Low), Math.Log(stored.High / stored.Value)));
        double up = Math.Exp(Norm(Math.Log(launched.High / launched.Value), Math.Log(stored.Value / stored.Low)));
        double error = share * Norm(launched.StandardError / launched.Value, stored.StandardError / stored.Value);
        var estimate = new Estimate<double>(share, error, share * down, share * up, launched.Level, launched.Count, "launch energy over stored energy");
        return new(estimate.Map(x => Ratio.FromDecimalFractions(x)), share * down > 1);
    }

    /// <summary>The finding in a sentence, with what to measure again.</summary>
    public string Text => IsImpossible
        ? FormattableString.Invariant($"Arrow and virtual mass would take {LaunchedShare.Value.Percent:0} % of the stored energy, which cannot be: measure the draw curve (scale, brace height, draw lengths) and the speeds again, at the same setting of the limb bolts.")
        : FormattableString.Invariant($"Arrow and virtual mass take {LaunchedShare.Value.Percent:0} % of the stored energy.");

    static double Norm(double a, double b) => Math.Sqrt(a * a + b * b);
}
