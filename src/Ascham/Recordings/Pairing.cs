namespace Ascham.Recordings;

using System.Globalization;

/// <summary>Which two sudden sounds are release and impact of one shot, or why that cannot be said.</summary>
/// <remarks>The levels are common practice, no source; what they are worth is counted in docs/validation/recordings.md.</remarks>
sealed class Pairing
{
    const double Clear = 12;         // dB over the noise that release and impact must have; fainter sounds count only against them
    const double NearlyLoudest = 12; // dB: beside the bow the release is the loudest sound, and any other this near to it may be the release instead
    const double ThirdSound = 18;    // dB below the release: another bow on the line is not fainter
    const double LouderTarget = 15;  // dB: most by which an impact is louder at its place than a release at its own
    const double MostBlur = 0.003;   // s; more is one per cent of the way to 20 yd
    const double Alike = 0.6;        // correlation of wave forms
    const double EchoWithin = 0.5;   // s: a way round of 170 m
    const double MostChance = 0.2, LikeImpact = 6; // dB below the impact, or louder
    const string Quieter = "Record out of the wind, on a shorter distance, or with a more sensitive microphone; never put it ahead of the shooting line.";
    const double SlowestBow = 30, FastestBow = 150; // m/s, of anybody's arrow

    readonly SuddenSounds sounds;
    readonly List<Sudden> found;
    readonly SoundPath path;
    readonly (double Least, double Greatest) window;

    internal Pairing(SuddenSounds sounds, SoundPath path, SpeedSpan speeds, bool clipped)
    {
        (this.sounds, this.path) = (sounds, path);
        window = path.Window(speeds);
        found = sounds.Find();
        Roles = new SoundRole[found.Count];
        MarkEchoes();
        (Unclear, Why) = Judge(clipped);
    }

    internal IReadOnlyList<Sudden> Found => found;

    internal SoundRole[] Roles { get; }

    internal UnclearReason? Unclear { get; }

    internal string Why { get; }

    /// <summary>Time from release to impact and its standard error, s; only when nothing is unclear.</summary>
    internal (double Apart, double Error) Times { get; private set; }

    bool BesideBow => path.Layout.ToBowSi < path.Layout.ToTargetSi / 2;

    string Window => Text($"{1000 * window.Least:0} to {1000 * window.Greatest:0} ms apart, as release and impact can be at this distance");

    (UnclearReason? Unclear, string Why) Judge(bool clipped)
    {
        int[] own = [.. Enumerable.Range(0, found.Count).Where(i => Roles[i] != SoundRole.Echo)];
        int[] releases = [.. own.Where(i => IsClear(i) && (!BesideBow || Below(i, Loudest) <= NearlyLoudest))];
        (int Release, int Impact)[] pairs = [.. from i in releases from j in own where Within(i, j, window) select (i, j)];
        if (!own.Any(IsClear))
        {
            return (UnclearReason.NothingHeard, Text($"Nothing sudden stands {Clear} dB out of the noise. {Quieter}"));
        }

        if (pairs.Length == 0)
        {
            return (UnclearReason.NoPair, Text($"Of {found.Count} sudden sounds (the first at {found[0].At:0.###} s) no two are {Window}. Was the impact heard at all? Are distance and span of speeds right?"));
        }

        if (pairs.Length > 1)
        {
            return (UnclearReason.SeveralPairs, Text($"{pairs.Length} pairs of sounds are {Window}. Cut out the shot, narrow the span of speeds, or record when nobody else shoots."));
        }

        (int release, int impact) = pairs[0];
        (double r, double m) = (found[release].At, found[impact].At);
        string both = Text($"Release at {r:0.000} s and impact at {m:0.000} s");
        if (!IsClear(impact))
        {
            return (UnclearReason.TooFaint, Text($"{both}: the impact stands only {Decibels(found[impact].OverNoise):0} dB out of the noise. {Quieter}"));
        }

        if (!clipped && Decibels(found[impact].Power / found[release].Power) > LouderTarget + Nearness)
        {
            return (UnclearReason.TooLoud, Text($"{both}: a sound {path.Layout.ToTargetSi:0} m away is not that loud beside a bow {path.Layout.ToBowSi:0.#} m away. Somebody else's bow?"));
        }

        if (own.Any(i => i != release && i != impact && MayBeAnotherBow(i, release, impact, releases)))
        {
            return (UnclearReason.AnotherBow, Text($"{both}, but a third sound may be of another archer's shot: his release before this impact, or his impact after this sound of his bow. Record when nobody else shoots; if nobody did, cut out the shot alone."));
        }

        if (ByChance(release, impact) is var chance && chance > MostChance)
        {
            return (UnclearReason.Restless, Text($"{both}, but sounds like that come so often here that one would stand there by chance {100 * chance:0} times in a hundred. Record out of the wind, or narrow the span of speeds."));
        }

        if (found[release].StartsTwice || found[impact].StartsTwice)
        {
            return (UnclearReason.DoubleStart, Text($"{both}: the {(found[release].StartsTwice ? "release" : "impact")} starts twice within some milliseconds (a click and a blow, or an echo near by), so its start is not known. Move the microphone away from walls, or read the onset by hand."));
        }

        double error = Math.Sqrt(Math.Pow(found[release].Error, 2) + Math.Pow(found[impact].Error, 2));
        if (error > MostBlur)
        {
            return (UnclearReason.Blurred, Text($"{both} are heard, but the time between them has a standard error of {1000 * error:0.0} ms. {Quieter}"));
        }

        (Roles[release], Roles[impact]) = (SoundRole.Release, SoundRole.Impact);
        Times = (m - r, error);
        return (null, Text($"{both}: {1000 * (m - r):0.0} ms apart, with a standard error of {1000 * error:0.0} ms."));
    }

    /// <summary>Whether a third sound speaks of another bow.</summary>
    bool MayBeAnotherBow(int third, int release, int impact, int[] releases)
        => BesideBow && releases.Contains(third) // as loud as a release
        || Below(third, release) < ThirdSound && Within(third, impact, AnyBow) // his release, and this is his impact
        || IsClear(third) && Within(impact, third, AnyBow); // his impact, and this was his release

    /// <summary>Chance that one of the other sounds, scattered over the recording as they are, falls in the window.</summary>
    double ByChance(int release, int impact)
    {
        int others = Enumerable.Range(0, found.Count).Count(i => i != release && i != impact && Roles[i] != SoundRole.Echo && Below(i, impact) < LikeImpact);
        return 1 - Math.Exp(-others * (window.Greatest - window.Least) / (sounds.HopCount * sounds.HopSeconds));
    }

    void MarkEchoes()
    {
        for (int j = 1; j < found.Count; j++)
        {
            for (int i = 0; i < j && Roles[j] != SoundRole.Echo; i++)
            {
                if (found[j].Power < found[i].Power && found[j].At - found[i].At < EchoWithin && sounds.Likeness(found[i], found[j]) > Alike)
                {
                    Roles[j] = SoundRole.Echo;
                }
            }
        }
    }

    /// <summary>By how much the level of a sound from the bow exceeds that of an equal one from the target, dB, negated: spherical spreading.</summary>
    double Nearness => 20 * Math.Log10(Math.Max(0.5, path.Layout.ToBowSi) / Math.Max(0.5, path.Layout.ToTargetSi));

    (double Least, double Greatest) AnyBow => (path.Flown / FastestBow + path.Late, path.Flown / SlowestBow + path.Late);

    int Loudest => Enumerable.Range(0, found.Count).MaxBy(i => found[i].Power);

    bool IsClear(int i) => Decibels(found[i].OverNoise) >= Clear;

    bool Within(int first, int second, (double Least, double Greatest) times) => found[second].At - found[first].At is var apart && apart >= times.Least && apart <= times.Greatest;

    double Below(int faint, int loud) => Decibels(found[loud].Power / found[faint].Power);

    static double Decibels(double ratio) => 10 * Math.Log10(ratio);

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
