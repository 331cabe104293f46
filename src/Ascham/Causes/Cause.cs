namespace Ascham.Causes;

/// <summary>What may have changed since all was well.</summary>
public enum Cause
{
    /// <summary>The bow pulls less or more at its peak: a limb bolt, a stretched string or cable, tired limbs.</summary>
    PeakWeight,

    /// <summary>The arrows weigh more or less: another point, wet vanes, an added nock.</summary>
    ArrowMass,

    /// <summary>The air holds the arrow back more: a vane that touches in passing, torn or wet vanes. Scatter grows with it.</summary>
    Drag,

    /// <summary>The arrow leaves at another angle up or down for the same pin: sight, peep, nocking point, rest.</summary>
    Elevation,

    /// <summary>The arrow leaves at another angle left or right: sight, rest, torque of the hand, pressure of the face.</summary>
    Lateral,

    /// <summary>The bow is held leaning: a level not watched, or set wrong.</summary>
    Cant,

    /// <summary>The sight's bar is tilted against the bow, so that the pin goes sideways as it goes down.</summary>
    SightAxis,

    /// <summary>The air is denser or thinner than recorded.</summary>
    Air,

    /// <summary>A steady wind.</summary>
    Wind,

    /// <summary>All distances were taken too short or too long in proportion.</summary>
    Distance,

    /// <summary>The archer tires: each arrow of a string goes lower than the one before, and scatter grows.</summary>
    Fatigue,

    /// <summary>The archer stands, holds or sees otherwise than usual, for this day; scatter grows with it.</summary>
    ArcherDay,
}

/// <summary>A number by which a cause is measured.</summary>
public enum CauseSize
{
    /// <summary>Change of the peak weight, pounds-force; negative when the bow pulls less.</summary>
    PeakWeight,

    /// <summary>Change of the arrow's mass, grains.</summary>
    ArrowMass,

    /// <summary>Natural logarithm of the drag over what it was: 0.10 is about 10 % more.</summary>
    Drag,

    /// <summary>Change of the launch angle upwards, milliradians.</summary>
    Elevation,

    /// <summary>Change of the launch angle to the right, milliradians.</summary>
    Lateral,

    /// <summary>Lean of the bow's top to the archer's right, degrees.</summary>
    Cant,

    /// <summary>Tilt of the sight's bar that sends a lowered pin's arrows to the right, degrees.</summary>
    SightAxis,

    /// <summary>Natural logarithm of the air's density over what was recorded.</summary>
    Air,

    /// <summary>Wind from behind, metres per second; negative for a head wind.</summary>
    TailWind,

    /// <summary>Wind from left to right, metres per second.</summary>
    CrossWind,

    /// <summary>True distance over that believed, less one; positive when the target stood farther off.</summary>
    Distance,

    /// <summary>Rise of each arrow of a string over the one before, milliradians; negative when they sink.</summary>
    Fatigue,

    /// <summary>The archer's own offset of the day upwards, milliradians.</summary>
    DayUp,

    /// <summary>The archer's own offset of the day to the right, milliradians.</summary>
    DayRight,
}

/// <summary>Words and units of causes.</summary>
public static class CauseText
{
    internal const int Sizes = 14;

    /// <summary>Gives the key under which answers name a cause.</summary>
    /// <param name="cause">The cause.</param>
    /// <returns>A word in lower case, parts joined by underscores, such as <c>peak_weight</c>.</returns>
    public static string Key(this Cause cause) => cause switch
    {
        Cause.PeakWeight => "peak_weight",
        Cause.ArrowMass => "arrow_mass",
        Cause.Drag => "drag",
        Cause.Elevation => "elevation",
        Cause.Lateral => "lateral",
        Cause.Cant => "cant",
        Cause.SightAxis => "sight_axis",
        Cause.Air => "air",
        Cause.Wind => "wind",
        Cause.Distance => "distance",
        Cause.Fatigue => "fatigue",
        Cause.ArcherDay => "archer_day",
        _ => throw new ArgumentOutOfRangeException(nameof(cause), cause, "There is no such cause."),
    };

    /// <summary>Gives the unit in which a size is counted.</summary>
    /// <param name="size">The size.</param>
    /// <returns>An abbreviation; empty for a plain number.</returns>
    public static string Unit(this CauseSize size) => size switch
    {
        CauseSize.PeakWeight => "lbf",
        CauseSize.ArrowMass => "gr",
        CauseSize.Drag or CauseSize.Air or CauseSize.Distance => "",
        CauseSize.Elevation or CauseSize.Lateral or CauseSize.DayUp or CauseSize.DayRight => "mrad",
        CauseSize.Cant or CauseSize.SightAxis => "°",
        CauseSize.TailWind or CauseSize.CrossWind => "m/s",
        CauseSize.Fatigue => "mrad per arrow",
        _ => throw new ArgumentOutOfRangeException(nameof(size), size, "There is no such size."),
    };

    /// <summary>Tells which sizes a cause has.</summary>
    /// <param name="cause">The cause.</param>
    /// <returns>One size, or two for a cause that acts up and sideways.</returns>
    public static IReadOnlyList<CauseSize> SizesOf(this Cause cause) => cause switch
    {
        Cause.PeakWeight => [CauseSize.PeakWeight],
        Cause.ArrowMass => [CauseSize.ArrowMass],
        Cause.Drag => [CauseSize.Drag],
        Cause.Elevation => [CauseSize.Elevation],
        Cause.Lateral => [CauseSize.Lateral],
        Cause.Cant => [CauseSize.Cant],
        Cause.SightAxis => [CauseSize.SightAxis],
        Cause.Air => [CauseSize.Air],
        Cause.Wind => [CauseSize.TailWind, CauseSize.CrossWind],
        Cause.Distance => [CauseSize.Distance],
        Cause.Fatigue => [CauseSize.Fatigue],
        Cause.ArcherDay => [CauseSize.DayUp, CauseSize.DayRight],
        _ => throw new ArgumentOutOfRangeException(nameof(cause), cause, "There is no such cause."),
    };
}
