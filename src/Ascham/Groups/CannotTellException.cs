namespace Ascham.Groups;

/// <summary>The shots at hand cannot answer the question asked: too few, or too coarsely recorded.</summary>
/// <remarks>The arguments are in order; more or better shots would answer. The message says which.</remarks>
public class CannotTellException : InvalidOperationException
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">What cannot be told, why, and what would settle it.</param>
    public CannotTellException(string message)
        : base(message)
    {
    }
}

/// <summary>A plain mean or spread was asked of shots some of which missed the butt.</summary>
/// <remarks>The arrows that struck are then a selection: their mean lies too close to the butt and their spread is too small.</remarks>
public sealed class MissedArrowsException : CannotTellException
{
    /// <summary>Makes the exception.</summary>
    /// <param name="missed">Number of arrows that missed the butt.</param>
    /// <param name="struck">Number of arrows that struck it.</param>
    public MissedArrowsException(int missed, int struck)
        : base($"{missed} of {missed + struck} counted arrows missed the butt, so a plain mean or spread of the {struck} that struck would be biased. "
            + "StationCentres.Fit uses missed arrows as what they are: impacts known to lie beyond an edge.")
        => (Missed, Struck) = (missed, struck);

    /// <summary>Number of arrows that missed the butt.</summary>
    public int Missed { get; }

    /// <summary>Number of arrows that struck it.</summary>
    public int Struck { get; }
}
