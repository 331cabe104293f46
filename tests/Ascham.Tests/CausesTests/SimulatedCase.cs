namespace Ascham.Tests.CausesTests;

using Ascham.Causes;
using Ascham.Groups;
using UnitsNet;

/// <summary>A simulated change with its truth, and the evidence of it that an archer would have.</summary>
sealed class SimulatedCase
{
    static readonly double[][] Ranges = [[20, 60], [20, 40, 60], [20, 30, 40, 50, 60], [20, 40, 60, 80], [20, 40, 60, 80, 100], [20, 30, 40, 50, 60, 70], [20, 80], [30, 50, 70]];

    static readonly Length Downrange = Length.FromYards(40);

    readonly SimulatedBow bow;
    readonly (double Up, double Right) today;
    readonly double growth;
    readonly Func<double, (double Up, double Right)>? odd;
    readonly List<Shot> then, now;
    readonly List<Reading> readings = [];
    readonly List<Sign> signs = [];

    internal SimulatedCase(int seed, CausePriors truth, bool bareOfReadings = false, IReadOnlyList<Cause>? forced = null, bool everyInstrument = false, bool logged = false)
    {
        bow = new(seed);
        Truth = forced ?? Draw(truth, out somethingElse);
        Sizes = new double[CauseText.Sizes];
        growth = 0.10 * bow.Normal();
        foreach (CausePrior cause in truth.Causes.Where(c => Truth.Contains(c.Cause)))
        {
            foreach (SizePrior size in cause.Sizes)
            {
                Sizes[(int)size.Size] = size.Mean + size.Sd * bow.Normal();
            }

            growth += cause.Growth + cause.GrowthSd * bow.Normal();
        }

        odd = somethingElse ? Odd() : null;
        Yards = Ranges[(int)bow.Even(0, Ranges.Length)];
        Count = (int)bow.Even(3, 13);
        then = bow.Shoot("then", Yards, Count, new double[CauseText.Sizes], 0, null, bow.Day());
        today = bow.Day();
        now = bow.Shoot("now", Yards, Count, Sizes, growth, odd, today);
        foreach (Instrument instrument in Costs.Instruments.Where(_ => logged))
        {
            readings.Add(bow.Read(instrument, Downrange, new double[CauseText.Sizes], false)); // the log of when all was well
        }

        foreach (Instrument instrument in Costs.Instruments.Where(_ => everyInstrument || (!bareOfReadings && bow.Chance(0.3))))
        {
            Read(instrument);
        }

        foreach (SignRate sign in truth.Signs.Where(_ => !everyInstrument && !bareOfReadings && bow.Chance(0.3)))
        {
            signs.Add(new(sign.Kind, bow.Chance(sign.When(Truth))));
        }

        Signs = truth.Signs;
    }

    readonly bool somethingElse;

    internal IReadOnlyList<Cause> Truth { get; }

    internal double[] Sizes { get; }

    internal double[] Yards { get; }

    internal int Count { get; }

    internal IReadOnlyList<SignRate> Signs { get; }

    internal KnownBow Known => bow.Known;

    internal double SigmaThen => bow.SigmaThen;

    /// <summary>Whether an answer is right: a cause that is at work, nothing where there is none, none of these where it is something else.</summary>
    internal bool IsRight(string answer) => answer switch
    {
        "nothing" => Truth.Count == 0 && !somethingElse,
        "none_fits" => somethingElse,
        _ => Truth.Any(c => c.Key() == answer),
    };

    /// <summary>Size of a change over the error of the instrument that sees it best, read then and now.</summary>
    internal double SignalOf(Cause cause)
    {
        double Error(ReadingKind kind) => Math.Sqrt(2) * Costs.Instruments.First(i => i.Kind == kind).Sd;
        double speeds = Math.Sqrt(Math.Pow(Error(ReadingKind.LaunchSpeed), 2) + Math.Pow(Error(ReadingKind.DownrangeSpeed), 2));
        return Math.Abs(cause switch
        {
            Cause.PeakWeight => Sizes[(int)CauseSize.PeakWeight] / Known.PeakWeight.PoundsForce / Error(ReadingKind.PeakWeight),
            Cause.ArrowMass => Sizes[(int)CauseSize.ArrowMass] / Known.ArrowMass.Grains / Error(ReadingKind.ArrowMass),
            _ => bow.True.DragConstantSi * Downrange.Meters * (Math.Exp(Sizes[(int)CauseSize.Drag]) - 1) / speeds,
        });
    }

    internal string TruthText => somethingElse ? "none_fits" : Truth.Count == 0 ? "nothing" : string.Join("+", Truth.Select(c => c.Key()));

    internal TestCosts Costs { get; } = new() { LongestSafeDistance = Length.FromYards(100), Distances = [.. Enumerable.Range(1, 10).Select(i => Length.FromYards(10 * i))] };

    internal Evidence Evidence()
    {
        var facts = new ShootingFacts { DistanceSd = Length.Zero, SettingSd = Angle.FromMilliradians(0.1) };
        return EvidenceOfShots.From(bow.Known, then, now, facts) with { Readings = [.. readings], Signs = [.. signs] };
    }

    /// <summary>Does a test and adds what it yields.</summary>
    internal void Do(TestCandidate test)
    {
        if (test.Reading is { } kind)
        {
            readings.Add(bow.Read(Costs.Instruments.First(i => i.Kind == kind), Downrange, Sizes, true));
        }
        else if (test.Sign is { } sign)
        {
            signs.Add(new(sign, bow.Chance(Signs.First(s => s.Kind == sign).When(Truth))));
        }
        else
        {
            Shoot([.. test.Distances.Select(d => d.Yards)], test.PerDistance, test.AnotherDay);
        }
    }

    internal void Shoot(double[] yards, int count, bool anotherDay)
    {
        double[] sizes = [.. Sizes];
        string session = "now";
        var day = today;
        if (anotherDay)
        {
            session = FormattableString.Invariant($"day {now.Select(s => s.Session).Distinct().Count()}");
            day = bow.Day();
            foreach (CauseSize size in new[] { CauseSize.DayUp, CauseSize.DayRight, CauseSize.TailWind, CauseSize.CrossWind, CauseSize.Fatigue })
            {
                sizes[(int)size] = 0;
            }
        }

        // Each string is a new one: the archer has rested.
        string group = FormattableString.Invariant($"string {now.Count}");
        now.AddRange(bow.Shoot(session, yards, count, sizes, growth, odd, day).Select(s => s with { Number = s.Number + now.Count, Group = group }));
    }

    void Read(Instrument instrument)
    {
        readings.Add(bow.Read(instrument, Downrange, new double[CauseText.Sizes], false));
        readings.Add(bow.Read(instrument, Downrange, Sizes, true));
    }

    IReadOnlyList<Cause> Draw(CausePriors priors, out bool other)
    {
        Hypothesis[] all = Hypothesis.All(priors, []);
        double pick = bow.Even(0, all.Sum(h => Math.Exp(h.LogOdds)));
        foreach (Hypothesis h in all)
        {
            pick -= Math.Exp(h.LogOdds);
            if (pick <= 0)
            {
                other = h.SomethingElse;
                return h.Causes;
            }
        }

        other = false;
        return [];
    }

    // One mark gone wrong, a shift that is there beyond some distance only, or a shift without a law.
    Func<double, (double Up, double Right)> Odd()
    {
        double up = 1.2 * bow.Normal(), right = 1.2 * bow.Normal(), kind = bow.Even(0, 3), from = bow.Even(35, 60);
        Dictionary<double, (double, double)> each = [];
        foreach (double yards in Enumerable.Range(1, 10).Select(i => 10.0 * i))
        {
            each[yards] = (1.0 * bow.Normal(), 1.0 * bow.Normal());
        }

        return kind < 1
            ? yards => Math.Abs(yards - 40) < 11 ? (2 * up, 2 * right) : (0, 0)
            : kind < 2 ? yards => yards > from ? (up, right) : (0, 0) : yards => each[yards];
    }
}
