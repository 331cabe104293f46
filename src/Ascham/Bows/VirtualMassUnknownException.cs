namespace Ascham.Bows;

/// <summary>The speeds measured do not tell the virtual mass, or tell one that no bow can have. The message says what to measure again.</summary>
public sealed class VirtualMassUnknownException : InvalidOperationException
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">What cannot be told, why, and what to measure again.</param>
    /// <param name="impliedGrains">The virtual mass the speeds imply at face value, in grains; infinite or negative when they imply none.</param>
    public VirtualMassUnknownException(string message, double impliedGrains)
        : base(message) => ImpliedGrains = impliedGrains;

    /// <summary>The virtual mass the speeds imply at face value, in grains; infinite or negative when they imply none.</summary>
    public double ImpliedGrains { get; }
}
