namespace Ascham.Arrows;

/// <summary>How much the lift of vanes grows because a shaft stands between them. With tau = shaft radius / (radius + vane height), 0.15 to 0.35 for arrows.</summary>
/// <remarks>Published theories differ here by 15 to 30 % of the lift of an arrow's vanes, so the choice is left to the caller, and no choice is made silently.</remarks>
public enum CarryOver
{
    /// <summary>The vanes alone: no growth. A lower bound.</summary>
    None,

    /// <summary>The vanes feel the shaft: 1 + tau. J. S. and J. A. Barrowman, NARAM-8 (1966).</summary>
    OntoVanes,

    /// <summary>The shaft between the vanes lifts as well: (1 + tau)², the whole of slender-body theory. NACA Report 1307, eqs. 14 and 21.</summary>
    OntoVanesAndShaft,
}
