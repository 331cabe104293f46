namespace Ascham.Groups;

/// <summary>The answer of arrows to a yes-or-no question.</summary>
public enum Verdict
{
    /// <summary>The arrows neither earn a yes nor a no.</summary>
    CannotTell,

    /// <summary>Yes, at the level asked.</summary>
    Yes,

    /// <summary>No, at the level asked.</summary>
    No,
}

/// <summary>Words for a verdict.</summary>
public static class VerdictText
{
    /// <summary>Gives the words that answers and reports use.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <returns>One of "yes", "no", "cannot tell".</returns>
    public static string Text(this Verdict verdict) => verdict switch
    {
        Verdict.Yes => "yes",
        Verdict.No => "no",
        _ => "cannot tell",
    };
}
