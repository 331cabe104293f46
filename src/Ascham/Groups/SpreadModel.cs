namespace Ascham.Groups;

/// <summary>What a comparison of centres assumes of the spread of the groups.</summary>
/// <remarks>
/// Choose before shooting; picking the model with the nicest answer afterwards undoes its error rate.
/// How often each keeps its promise, for round and stretched groups of like and unlike spread, stands in docs/validation/groups-comparison.md.
/// </remarks>
public enum SpreadModel
{
    /// <summary>
    /// <see cref="RoundUnlike"/> below twelve arrows in the smaller group, <see cref="AnyShapeUnlike"/> from there on. It depends on the number of arrows, never on where they fell.
    /// </summary>
    Recommended,

    /// <summary>Round groups with one spread between them. Sharpest; exact when true.</summary>
    Round,

    /// <summary>Round groups, each with its own spread: Welch's degrees of freedom over both axes.</summary>
    RoundUnlike,

    /// <summary>Groups of one shape, whatever it be: Hotelling. Exact when true; needs five arrows or more to be of use.</summary>
    AnyShape,

    /// <summary>Groups each with its own shape: modified Nel and van der Merwe (Krishnamoorthy and Yu 2004), which does not depend on the units of the axes.</summary>
    AnyShapeUnlike,

    /// <summary>Groups each with its own shape: James's first-order series (1954). Convicts too often in small groups.</summary>
    AnyShapeUnlikeJames,
}
