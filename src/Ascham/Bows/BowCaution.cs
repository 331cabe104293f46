namespace Ascham.Bows;

/// <summary>A caution that a page shows where the work it belongs to is talked about.</summary>
/// <param name="Name">Short name, for finding it.</param>
/// <param name="Text">The caution, in whole sentences.</param>
/// <param name="Source">Where it is from; often common practice.</param>
public sealed record BowCaution(string Name, string Text, string Source)
{
    const string Practice = "common practice, no source";

    /// <summary>Arrows too light for the bow.</summary>
    public static BowCaution LightArrow { get; } = new(
        "light arrow",
        "An arrow too light for its bow leaves energy in limbs, cams and string, and comes near a dry fire: it can break the bow and hurt you. "
        + "The maker's lower limit comes first. Where none is stated, 5 grains per pound of peak weight is a common one for compounds; recurves and longbows need more.",
        Practice);

    /// <summary>Letting go without an arrow.</summary>
    public static BowCaution DryFire { get; } = new(
        "dry fire",
        "Never let go a string without an arrow on it. After a dry fire, and after a cracked nock, do not draw the bow again until limbs, cams, axles, string and cables have been looked over by someone trained for it.",
        Practice);

    /// <summary>Turning limb bolts.</summary>
    public static BowCaution LimbBoltTurns { get; } = new(
        "limb bolts",
        "Turn both limb bolts by the same amount, and never out beyond the number of turns the maker states: a limb can leave its pocket under load. If no number is stated, ask the maker before turning. Check tiller, nocking point and sight afterwards.",
        Practice);

    /// <summary>Work on string and cables.</summary>
    public static BowCaution Press { get; } = new(
        "press",
        "String, cables, cams and limbs come off only in a press made for that bow, used by someone trained for it. Backing out limb bolts does not replace a press unless the maker says so.",
        Practice);

    /// <summary>Damaged carbon shafts.</summary>
    public static BowCaution CarbonShaft { get; } = new(
        "carbon shaft",
        "Before each shot look at the shaft and turn it between your fingers; then, with the head taken off and the shaft away from your face, flex it by about 50 mm in four directions and twist it both ways, and listen. "
        + "Check the seat of the nock. A shaft that cracks, splinters or feels soft is destroyed, not shot: it can break at the release and go into your hand or arm.",
        "archery.org.au/safety, a national federation's page");

    /// <summary>Drawing the bow to measure it.</summary>
    public static BowCaution Measuring { get; } = new(
        "measuring",
        "Measure a draw curve on a draw board or a bench that holds bow and string and lets them down slowly; a hook that slips off is a dry fire, so fasten it, wear eye protection and stand clear of limbs, string and cables. Over a chronograph shoot only at a safe butt, nobody and nothing beside or behind it.",
        Practice);

    /// <summary>What the law asks of bow and arrow.</summary>
    public static BowCaution LocalCode { get; } = new(
        "local code",
        "Least draw weight, least arrow mass, kinds of head and limits of let-off for hunting differ from place to place and change: check your local code. Nothing here says what is lawful, or enough for any animal.",
        "no table of law is kept here");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<BowCaution> All { get; } = [LightArrow, DryFire, LimbBoltTurns, Press, CarbonShaft, Measuring, LocalCode];
}
