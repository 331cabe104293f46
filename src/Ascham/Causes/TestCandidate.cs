namespace Ascham.Causes;

using System.Globalization;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Something that could be shot, read or looked for next.</summary>
public sealed record TestCandidate
{
    TestCandidate(string key, string what, int arrows, double minutes) => (Key, What, Arrows, Minutes) = (key, what, arrows, minutes);

    /// <summary>A short name that answers use, such as <c>shoot_80_yd</c> or <c>bow_scale</c>.</summary>
    public string Key { get; }

    /// <summary>What to do, in a few words.</summary>
    public string What { get; }

    /// <summary>Arrows it takes.</summary>
    public int Arrows { get; }

    /// <summary>Minutes it takes, about.</summary>
    public double Minutes { get; }

    internal IReadOnlyList<Length> Distances { get; private init; } = [];

    internal int PerDistance { get; private init; }

    internal bool AnotherDay { get; private init; }

    internal ReadingKind? Reading { get; private init; }

    internal Length? ReadAt { get; private init; }

    internal SignKind? Sign { get; private init; }

    internal static TestCandidate Shoot(IReadOnlyList<Length> distances, int arrows, bool anotherDay, TestCosts costs)
    {
        string places = string.Join(" and ", distances.Select(d => d.ToString("0", CultureInfo.InvariantCulture)));
        string key = "shoot_" + string.Join("_", distances.Select(d => d.ToString("0", CultureInfo.InvariantCulture).Replace(' ', '_')))
            + (arrows == costs.UsualGroup ? "" : FormattableString.Invariant($"_{arrows}_arrows")) + (anotherDay ? "_another_day" : "");
        int all = arrows * distances.Count;
        double minutes = all * costs.MinutesPerArrow + distances.Sum(d => 2 * d.Meters / costs.Walk / 60) + (anotherDay ? costs.AnotherDay : 0) + costs.GettingReady;
        return new(key, FormattableString.Invariant($"shoot {arrows} arrows at {places}{(anotherDay ? " on another day" : "")}"), all, minutes)
        {
            Distances = distances,
            PerDistance = arrows,
            AnotherDay = anotherDay,
        };
    }

    internal static TestCandidate Read(Instrument instrument, TestCosts costs, Length? at = null) => new(
        instrument.Kind switch
        {
            ReadingKind.LaunchSpeed => "chronograph",
            ReadingKind.DownrangeSpeed => "chronograph_downrange",
            ReadingKind.PeakWeight => "bow_scale",
            _ => "arrow_scale",
        },
        instrument.Kind switch
        {
            ReadingKind.LaunchSpeed => FormattableString.Invariant($"read the speed of {instrument.Arrows} arrows at the bow"),
            ReadingKind.DownrangeSpeed => FormattableString.Invariant($"read the speed of {instrument.Arrows} arrows at {at}, the instrument shielded"),
            ReadingKind.PeakWeight => "draw the bow on a scale",
            _ => "weigh the arrows",
        },
        instrument.Arrows, instrument.Minutes + costs.GettingReady)
    {
        Reading = instrument.Kind,
        ReadAt = at,
    };

    internal static TestCandidate Look(SignKind kind, int arrows, double minutes, TestCosts costs) => new(
        kind switch
        {
            SignKind.ContactMarks => "contact_marks",
            SignKind.WitnessMoved => "witness_marks",
            SignKind.BareShaftMoved => "bare_shafts",
            SignKind.LevelOff => "plumb_line",
            SignKind.SightBarTilted => "sight_bar",
            SignKind.WindFelt => "wind",
            _ => "distances",
        },
        kind switch
        {
            SignKind.ContactMarks => "powder the vanes and the cable, shoot, and look for marks",
            SignKind.WitnessMoved => "hold sight, peep, nocking point and rest against their witness marks and measures",
            SignKind.BareShaftMoved => "shoot bare shafts close, beside fletched ones",
            SignKind.LevelOff => "check the level against a plumb line, and have someone watch it at full draw",
            SignKind.SightBarTilted => "run the sight down a plumb line with the bow hung plumb",
            SignKind.WindFelt => "ask yourself whether there was wind",
            _ => "measure the distances again with a tape",
        },
        arrows, minutes + costs.GettingReady)
    {
        Sign = kind,
    };
}

/// <summary>An instrument at hand, and what a reading of it takes.</summary>
/// <param name="Kind">What it reads.</param>
/// <param name="Sd">Standard error of a reading between two days, as a share of the value; positive.</param>
/// <param name="Arrows">Arrows it takes.</param>
/// <param name="Minutes">Minutes it takes.</param>
public sealed record Instrument(ReadingKind Kind, double Sd, int Arrows, double Minutes);

/// <summary>What tests cost, and which may be done.</summary>
/// <remarks>All of it can be changed. // common practice, no source</remarks>
public sealed record TestCosts
{
    /// <summary>No arrow is proposed beyond this: where a miss is still stopped safely.</summary>
    public required Length LongestSafeDistance { get; init; }

    /// <summary>Distances that can be shot, such as every ten yards; those beyond the safe one are left out.</summary>
    public required IReadOnlyList<Length> Distances { get; init; }

    /// <summary>Arrows of a usual group.</summary>
    public int UsualGroup { get; init; } = 6;

    /// <summary>Arrows of a quick group.</summary>
    public int QuickGroup { get; init; } = 3;

    /// <summary>Minutes for one arrow, without walking.</summary>
    public double MinutesPerArrow { get; init; } = 0.75;

    /// <summary>Speed of walking to the butt and back, m/s.</summary>
    public double Walk { get; init; } = 1.3;

    /// <summary>Minutes that any test costs beside its own, to get ready and to write down.</summary>
    public double GettingReady { get; init; } = 2;

    /// <summary>Minutes that coming back on another day is held to cost.</summary>
    public double AnotherDay { get; init; } = 45;

    /// <summary>The instruments at hand; as it stands, those of a well-equipped bench. Give yours, or none.</summary>
    public IReadOnlyList<Instrument> Instruments { get; init; } =
    [
        new(ReadingKind.LaunchSpeed, 0.003, 5, 6),
        new(ReadingKind.DownrangeSpeed, 0.004, 6, 12),
        new(ReadingKind.PeakWeight, 0.007, 0, 4),
        new(ReadingKind.ArrowMass, 0.002, 0, 3),
    ];

    /// <summary>Signs that can be looked for: arrows and minutes of each.</summary>
    public IReadOnlyList<(SignKind Kind, int Arrows, double Minutes)> Signs { get; init; } =
    [
        (SignKind.ContactMarks, 2, 6),
        (SignKind.WitnessMoved, 0, 3),
        (SignKind.BareShaftMoved, 6, 10),
        (SignKind.LevelOff, 0, 5),
        (SignKind.SightBarTilted, 0, 6),
        (SignKind.WindFelt, 0, 0.5),
        (SignKind.DistanceWrong, 0, 5),
    ];

    internal IEnumerable<TestCandidate> Candidates()
    {
        Length[] safe = [.. Distances.Where(d => d <= LongestSafeDistance).Order()];
        foreach (Length distance in safe)
        {
            yield return TestCandidate.Shoot([distance], UsualGroup, false, this);
            yield return TestCandidate.Shoot([distance], QuickGroup, false, this);
        }

        if (safe.Length > 1)
        {
            yield return TestCandidate.Shoot([safe[0], safe[^1]], UsualGroup, false, this);
            yield return TestCandidate.Shoot([safe[0], safe[^1]], UsualGroup, true, this);
        }

        foreach (Instrument instrument in Instruments)
        {
            if (instrument.Kind != ReadingKind.DownrangeSpeed)
            {
                yield return TestCandidate.Read(instrument, this);
            }
            else if (safe.LastOrDefault(d => d.Meters <= 37) is { Meters: > 0 } far) // farther, too few arrows pass the window
            {
                yield return TestCandidate.Read(instrument, this, far);
            }
        }

        foreach (var (kind, arrows, minutes) in Signs)
        {
            yield return TestCandidate.Look(kind, arrows, minutes, this);
        }
    }

    internal void Check()
    {
        Require.Positive(LongestSafeDistance.Meters, "m", nameof(LongestSafeDistance));
        Require.Positive(MinutesPerArrow, "min", nameof(MinutesPerArrow));
        Require.Positive(Walk, "m/s", nameof(Walk));
        Require.InRange(UsualGroup, 1, 1000, "arrows", nameof(UsualGroup));
        Require.InRange(QuickGroup, 1, 1000, "arrows", nameof(QuickGroup));
        foreach (var (kind, arrows, minutes) in Signs)
        {
            Require.InRange(arrows, 0, 1000, "arrows", $"arrows of {kind}");
            Require.NotNegative(minutes, "min", $"minutes of {kind}");
        }

        Require.NotNegative(AnotherDay, "min", nameof(AnotherDay));
        Require.NotNegative(GettingReady, "min", nameof(GettingReady));
        foreach (Length distance in Distances)
        {
            Require.Positive(distance.Meters, "m", nameof(Distances));
        }

        foreach (Instrument instrument in Instruments)
        {
            Require.Positive(instrument.Sd, "", nameof(instrument.Sd));
            Require.Positive(instrument.Minutes, "min", nameof(instrument.Minutes));
        }
    }
}
