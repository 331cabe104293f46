namespace Ascham.Causes;

using Ascham.Quantities;

/// <summary>How often a cause is met, before any evidence, and how large it then is.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Rate">Share of outings, of those where the archer asks, in which it is at work; above 0, below 1.</param>
/// <param name="Sizes">The usual size and its spread, one entry per size of the cause: normal.</param>
/// <param name="Growth">Natural logarithm of the growth of scatter that comes with it; 0 for none.</param>
/// <param name="GrowthSd">Standard deviation of that logarithm, beyond the ordinary one.</param>
public sealed record CausePrior(Cause Cause, double Rate, IReadOnlyList<SizePrior> Sizes, double Growth = 0, double GrowthSd = 0)
{
    internal void Check()
    {
        Require.Level(Rate, $"{nameof(Rate)} of {Cause.Key()}");
        Require.Finite(Growth, "", nameof(Growth));
        Require.NotNegative(GrowthSd, "", nameof(GrowthSd));
        if (!Sizes.Select(s => s.Size).SequenceEqual(Cause.SizesOf()))
        {
            throw new ArgumentException($"{Cause.Key()} has the sizes {string.Join(", ", Cause.SizesOf())}, in this order; the prior gives {string.Join(", ", Sizes.Select(s => s.Size))}.");
        }

        foreach (SizePrior size in Sizes)
        {
            Require.Finite(size.Mean, size.Size.Unit(), nameof(size.Mean));
            Require.Positive(size.Sd, size.Size.Unit(), nameof(size.Sd));
        }
    }
}

/// <summary>Usual size of a cause when it is at work: normal about a mean.</summary>
/// <param name="Size">Which size.</param>
/// <param name="Mean">In the unit of <see cref="CauseText.Unit"/>.</param>
/// <param name="Sd">Standard deviation; positive.</param>
public sealed record SizePrior(CauseSize Size, double Mean, double Sd);
