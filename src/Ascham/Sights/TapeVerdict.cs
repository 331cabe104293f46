namespace Ascham.Sights;

/// <summary>What shots say of a printed tape.</summary>
public enum TapeVerdict
{
    /// <summary>The shots are too few or too scattered to say.</summary>
    CannotTell,

    /// <summary>At every mark of the tape the centre stays within the margin.</summary>
    Agrees,

    /// <summary>Every mark is out by the same travel: slide the tape.</summary>
    Slid,

    /// <summary>The marks are spread too closely or too widely about the shortest one: print another.</summary>
    Scaled,

    /// <summary>Neither a slide nor a scale explains the shots: the tape bends, or one mark is wrong.</summary>
    Bent,
}

/// <summary>Words for a verdict.</summary>
public static class TapeVerdictText
{
    /// <summary>Gives the word that answers and reports use.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <returns>One of "agrees", "slid", "scaled", "bent", "cannot tell".</returns>
    public static string Text(this TapeVerdict verdict) => verdict switch
    {
        TapeVerdict.Agrees => "agrees",
        TapeVerdict.Slid => "slid",
        TapeVerdict.Scaled => "scaled",
        TapeVerdict.Bent => "bent",
        _ => "cannot tell",
    };
}
