namespace Ascham.Causes;

using Ascham.Groups;
using Ascham.Quantities;
using Ascham.Sights;
using UnitsNet;

/// <summary>What is known of the shooting beside the shots.</summary>
public sealed record ShootingFacts
{
    /// <summary>The butt's edges, for missed arrows.</summary>
    public StationOptions Butt { get; init; } = new();

    /// <summary>Standard deviation of one distance, once for each station.</summary>
    public required Length DistanceSd { get; init; }

    /// <summary>Standard deviation, as an angle, of setting the sight once.</summary>
    public required Angle SettingSd { get; init; }

    /// <summary>The printed tape: needed only for shots whose sight setting is recorded.</summary>
    public Tape? Tape { get; init; }
}

/// <summary>Puts evidence together from shots.</summary>
public static class EvidenceOfShots
{
    /// <summary>Makes evidence from the shots of two times.</summary>
    /// <param name="bow">The bow as it was when all was well.</param>
    /// <param name="then">Shots from when all was well; none, when there are none.</param>
    /// <param name="now">Shots from now; one at least.</param>
    /// <param name="facts">What is known beside the shots.</param>
    /// <returns>
    /// Station means, scatter and slopes along strings. Called flyers are set aside, missed arrows are used as what they are, the wildest impacts are pulled in
    /// (see the remarks of docs/models/causes.md). Bare shafts (<see cref="Shot.Fletched"/> false) are stations of their own.
    /// </returns>
    /// <exception cref="ArgumentException">No shot from now, a shot on a slope, or a setting without a tape.</exception>
    /// <exception cref="CannotTellException">No station of now can be estimated.</exception>
    public static Evidence From(KnownBow bow, IReadOnlyList<Shot> then, IReadOnlyList<Shot> now, ShootingFacts facts)
    {
        ArgumentNullException.ThrowIfNull(bow);
        ArgumentNullException.ThrowIfNull(then);
        ArgumentNullException.ThrowIfNull(now);
        ArgumentNullException.ThrowIfNull(facts);
        bow.Check();
        Require.NotNegative(facts.DistanceSd.Meters, "m", nameof(facts.DistanceSd));
        Require.NotNegative(facts.SettingSd.Milliradians, "mrad", nameof(facts.SettingSd));
        Side before = then.Count > 0 ? Side.Of(bow, then, false, facts) : new([], WithinScatter.Unknown, [], [], 0), after = Side.Of(bow, now, true, facts);
        return new()
        {
            Bow = bow,
            Stations = [.. before.Stations, .. after.Stations],
            ScatterThen = before.Scatter,
            ScatterNow = after.Scatter,
            Slopes = [.. before.Slopes, .. after.Slopes],
            Doubts = [.. Doubts(then, now), .. before.Doubts, .. after.Doubts],
            PulledIn = before.Pulled + after.Pulled,
        };
    }

    static IEnumerable<string> Doubts(IReadOnlyList<Shot> then, IReadOnlyList<Shot> now)
    {
        string[] Named(IReadOnlyList<Shot> shots, Func<Shot, string?> of) => [.. shots.Select(of).OfType<string>().Distinct().Order(StringComparer.Ordinal)];
        string[] before = Named(then, s => s.PointType), after = Named(now, s => s.PointType);
        if (before.Length > 0 && after.Length > 0 && !before.SequenceEqual(after))
        {
            yield return $"The sessions were shot with different points ({string.Join(", ", before)}; {string.Join(", ", after)}): a difference may be theirs. Compare like with like.";
        }

        before = Named(then, s => s.Arrow);
        after = Named(now, s => s.Arrow);
        if (before.Length > 0 && after.Length > 0 && !before.Intersect(after).Any())
        {
            yield return $"The sessions were shot with different arrows ({string.Join(", ", before)}; {string.Join(", ", after)}): a difference may be theirs.";
        }
    }

    /// <summary>The shots of one time.</summary>
    sealed record Side(IReadOnlyList<StationMean> Stations, WithinScatter Scatter, IReadOnlyList<StringSlope> Slopes, IReadOnlyList<string> Doubts, int Pulled)
    {
        internal static Side Of(KnownBow bow, IReadOnlyList<Shot> shots, bool isNow, ShootingFacts facts)
        {
            if (shots.FirstOrDefault(s => Math.Abs(s.Slope?.Degrees ?? 0) > 1) is { } sloping)
            {
                throw new ArgumentException($"Shot {sloping.Number} of session {sloping.Session} was shot on a slope; leave slopes above 1° out.", nameof(shots));
            }

            var (bare, fletched) = (shots.Where(s => s.Fletched == false).ToList(), shots.Where(s => s.Fletched != false).ToList());
            List<StationMean> stations = [];
            WithinScatter scatter = WithinScatter.Unknown;
            List<StringSlope> slopes = [];
            List<string> doubts = [];
            int pulled = 0;
            foreach (var (kind, isBare) in new[] { (fletched, false), (bare, true) })
            {
                if (kind.Count > 0 && StationGroup.From(kind) is var lone && lone.All(s => s.Counted == 1 && s.Impacts.Count == 1))
                {
                    stations.AddRange(lone.Select(s => Lone(bow, s, isNow, isBare, facts))); // scatter stays unknown, and the ranking says so
                }
                else if (kind.Count > 0)
                {
                    var (shotsUsed, count) = PulledIn.Of(kind);
                    StationCentres fit = StationCentres.Fit(StationGroup.From(shotsUsed), facts.Butt);
                    pulled += count;
                    doubts.AddRange(fit.SetAside.Select(a => $"{a.Station} could not be used: {a.Reason}"));
                    doubts.AddRange(fit.Stations.Where(c => c.EdgeAssumed).Select(c => $"{c.Station}: arrows missed and the butt's edge is not known; measure the butt, or the mean says too little."));
                    stations.AddRange(fit.Stations.Select(s => Mean(bow, s, fit, isNow, isBare, facts)));
                    if (!isBare)
                    {
                        scatter = new(fit.Vertical.Sample.Milliradians, fit.Horizontal.Sample.Milliradians, Math.Min(fit.Vertical.DegreesOfFreedom, fit.Horizontal.DegreesOfFreedom));
                        slopes.AddRange(SlopeOf(fit, isNow));
                    }
                }
            }

            return new(stations, scatter, slopes, doubts, pulled);
        }

        static StationMean Mean(KnownBow bow, StationCentre centre, StationCentres fit, bool isNow, bool isBare, ShootingFacts facts)
        {
            double sigma = fit.Vertical.Sample.Radians * centre.Station.Distance.Meters, error = centre.MeanUpStandardError.Meters;
            double worth = Math.Min(centre.Count, sigma * sigma / (error * error));
            return Station(bow, centre.Station, centre.MeanUp, centre.MeanRight, worth, isNow, isBare, facts);
        }

        static StationMean Lone(KnownBow bow, StationGroup station, bool isNow, bool isBare, ShootingFacts facts) =>
            Station(bow, station, station.Impacts[0].Up, station.Impacts[0].Right, 1, isNow, isBare, facts);

        static StationMean Station(KnownBow bow, StationGroup station, Length up, Length right, double worth, bool isNow, bool isBare, ShootingFacts facts)
        {
            double setting = station.Distance.Meters * facts.SettingSd.Radians, drop = DropPerDistance(bow, station.Distance) * facts.DistanceSd.Meters;
            return new()
            {
                Session = station.Session,
                Now = isNow,
                Distance = station.Distance,
                SightAngle = AngleSet(bow, station, facts),
                Up = up,
                Right = right,
                Arrows = worth,
                UpSd = Length.FromMeters(Math.Sqrt(setting * setting + drop * drop)),
                ShotBefore = Places(station).Average(p => p.Place),
                Bare = isBare,
            };
        }

        // How much lower the arrow strikes on a butt that stands one metre farther off than believed.
        static double DropPerDistance(KnownBow bow, Length distance)
        {
            Length step = Length.FromMeters(0.01);
            Length pin = bow.Sight.PinBelowPeep(distance);
            return (bow.Sight.HeightWithPinAt(pin, distance + step) - bow.Sight.HeightWithPinAt(pin, distance - step)) / (2 * step);
        }

        static Angle? AngleSet(KnownBow bow, StationGroup station, ShootingFacts facts)
        {
            if (station.Setting is not { } setting)
            {
                return null;
            }

            Tape tape = facts.Tape ?? throw new ArgumentException($"{station} records where the sight stood; give the tape, so that the angle can be told.", nameof(facts));
            Length pin = bow.Sight.PinBelowPeep(station.Distance) + bow.Sight.PinTravel(setting - tape.PositionAt(station.Distance));
            return Angle.FromRadians(Math.Atan(pin / bow.Sight.Geometry.PeepToPin));
        }

        // A string begins anew where the name of the group changes: the archer has rested.
        static IEnumerable<(Shot Shot, double Place)> Places(StationGroup station)
        {
            Dictionary<string, int> shot = [];
            foreach (Shot one in station.Shots)
            {
                string name = one.Group ?? "";
                shot[name] = shot.TryGetValue(name, out int before) ? before + 1 : 0;
                yield return (one, shot[name]);
            }
        }

        static IEnumerable<StringSlope> SlopeOf(StationCentres fit, bool isNow)
        {
            double squares = 0, products = 0;
            foreach (StationGroup station in fit.Stations.Select(s => s.Station))
            {
                foreach (var oneString in Places(station).GroupBy(p => p.Shot.Group))
                {
                    (double Place, double Up)[] points = [.. oneString.Where(p => !p.Shot.Called && p.Shot.Impact is not null)
                        .Select(p => (p.Place, 1000 * (p.Shot.Impact!.Value.Up / p.Shot.Distance)))];
                    if (points.Length > 1)
                    {
                        double place = points.Average(p => p.Place), up = points.Average(p => p.Up);
                        squares += points.Sum(p => (p.Place - place) * (p.Place - place));
                        products += points.Sum(p => (p.Place - place) * (p.Up - up));
                    }
                }
            }

            if (squares > 0)
            {
                yield return new(products / squares, squares, isNow);
            }
        }
    }
}
