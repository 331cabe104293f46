namespace Ascham.Causes;

/// <summary>Something that is looked for on the bow, the arrow or the range, and is there or not.</summary>
public enum SignKind
{
    /// <summary>Marks of contact on vanes, cable or rest, found with powder or lipstick.</summary>
    ContactMarks,

    /// <summary>Sight, peep, nocking point or rest stands off its witness mark or noted measure.</summary>
    WitnessMoved,

    /// <summary>Bare shafts strike elsewhere, against the fletched ones, than they used to.</summary>
    BareShaftMoved,

    /// <summary>The bow leans when its own level says it does not, seen against a plumb line, or was seen leaning at full draw.</summary>
    LevelOff,

    /// <summary>The sight's bar does not run along a plumb line when the bow hangs plumb.</summary>
    SightBarTilted,

    /// <summary>There was wind enough to feel.</summary>
    WindFelt,

    /// <summary>Distances measured again with a tape or another instrument came out otherwise.</summary>
    DistanceWrong,
}

/// <summary>A sign looked for.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Seen">Whether it was there.</param>
public sealed record Sign(SignKind Kind, bool Seen);

/// <summary>How often a sign is seen.</summary>
/// <param name="Kind">The sign.</param>
/// <param name="Otherwise">Probability of seeing it when none of the causes below is at work; above 0, below 1.</param>
/// <param name="Given">Probability of seeing it when a cause is at work.</param>
public sealed record SignRate(SignKind Kind, double Otherwise, IReadOnlyList<SignGiven> Given)
{
    /// <summary>Probability of seeing it when some causes are at work.</summary>
    internal double When(IEnumerable<Cause> causes) =>
        1 - causes.Aggregate(1 - Otherwise, (unseen, cause) => unseen * (1 - (Given.FirstOrDefault(g => g.Cause == cause)?.Probability ?? 0)));
}

/// <summary>Probability of a sign given a cause.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Probability">Above 0, below 1.</param>
public sealed record SignGiven(Cause Cause, double Probability);
