namespace Ascham.Bows;

/// <summary>What sort of bow it is; it decides which lower limit of arrow mass applies when the maker states none.</summary>
public enum BowKind
{
    /// <summary>With wheels or cams.</summary>
    Compound,

    /// <summary>With tips bent away from the archer on which the string lies.</summary>
    Recurve,

    /// <summary>With limbs whose tips the string leaves free.</summary>
    Longbow,
}
