namespace Ascham.Air;

/// <summary>How the air moves over the range: one steady <see cref="Wind"/>, a wind in <see cref="WindSegments"/> along the line of sight, or a <see cref="WindProfile"/> that grows with height.</summary>
/// <remarks>Steady in time. Gusts during a flight of a second are not described; fly the extremes.</remarks>
public abstract record WindField
{
    private protected WindField()
    {
    }
}
