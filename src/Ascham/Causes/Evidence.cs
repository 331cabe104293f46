namespace Ascham.Causes;

using Ascham.Quantities;

/// <summary>All that is known of one change: impacts then and now, readings, signs. Everything but the bow and some stations may be missing.</summary>
public sealed record Evidence
{
    /// <summary>The bow as it was when all was well.</summary>
    public required KnownBow Bow { get; init; }

    /// <summary>Mean impacts from when all was well and from now.</summary>
    public required IReadOnlyList<StationMean> Stations { get; init; }

    /// <summary>Scatter when all was well.</summary>
    public WithinScatter ScatterThen { get; init; } = WithinScatter.Unknown;

    /// <summary>Scatter now.</summary>
    public WithinScatter ScatterNow { get; init; } = WithinScatter.Unknown;

    /// <summary>Slopes along strings.</summary>
    public IReadOnlyList<StringSlope> Slopes { get; init; } = [];

    /// <summary>Readings of instruments.</summary>
    public IReadOnlyList<Reading> Readings { get; init; } = [];

    /// <summary>Signs looked for.</summary>
    public IReadOnlyList<Sign> Signs { get; init; } = [];

    /// <summary>Reasons, found while the evidence was put together, why no cause may be named from it.</summary>
    public IReadOnlyList<string> Doubts { get; init; } = [];

    /// <summary>How many impacts, farthest from their station's centre, were pulled in.</summary>
    public int PulledIn { get; init; }

    /// <summary>The outing asked about: the first session of now. What was of its day (the archer, the wind, fatigue) is taken to be gone in later ones.</summary>
    public string? Outing => Stations.FirstOrDefault(s => s.Now)?.Session;

    /// <summary>Whether fletched impacts from when all was well are among the stations.</summary>
    public bool HasBaseline => Stations.Any(s => !s.Now && !s.Bare);

    /// <summary>The same with more of it.</summary>
    /// <param name="readings">Readings to add.</param>
    /// <returns>The larger evidence.</returns>
    public Evidence With(params IEnumerable<Reading> readings) => this with { Readings = [.. Readings, .. readings] };

    /// <summary>The same with a sign looked for.</summary>
    /// <param name="signs">Signs to add.</param>
    /// <returns>The larger evidence.</returns>
    public Evidence With(params IEnumerable<Sign> signs) => this with { Signs = [.. Signs, .. signs] };

    internal void Check()
    {
        ArgumentNullException.ThrowIfNull(Bow);
        Bow.Check();
        if (Stations.Count == 0)
        {
            throw new ArgumentException("Evidence must hold at least one station; it was empty.", nameof(Stations));
        }

        foreach (StationMean station in Stations)
        {
            station.Check();
        }

        if (Stations.Where(s => s.Now).Select(s => s.Session).Intersect(Stations.Where(s => !s.Now).Select(s => s.Session)).FirstOrDefault() is { } both)
        {
            throw new ArgumentException($"Session {both} is given as of then and as of now: it would seem that the archer's day is the same. Name the two outings apart.", nameof(Stations));
        }

        if (Readings.GroupBy(r => (r.Kind, r.Now, r.DistanceSi)).FirstOrDefault(g => g.Count() > 1) is { } repeated)
        {
            throw new ArgumentException($"{repeated.Key.Kind} is read {repeated.Count()} times from {(repeated.Key.Now ? "now" : "then")}. Give their mean as one reading: the instrument's own error does not shrink by reading it again.", nameof(Readings));
        }

        if (Signs.GroupBy(s => s.Kind).FirstOrDefault(g => g.Count() > 1) is { } twice)
        {
            throw new ArgumentException($"{twice.Key} is given {twice.Count()} times; give each sign once.", nameof(Signs));
        }

        foreach (StringSlope slope in Slopes)
        {
            Require.Finite(slope.PerArrow, "mrad per arrow", nameof(slope.PerArrow));
            Require.Positive(slope.SumOfSquares, "", nameof(slope.SumOfSquares));
        }

        ScatterThen.Check(nameof(ScatterThen));
        ScatterNow.Check(nameof(ScatterNow));
    }

    /// <summary>What is missing for a cause to be named at all.</summary>
    internal IEnumerable<string> Missing()
    {
        foreach (string doubt in Doubts)
        {
            yield return doubt;
        }

        if (!Stations.Any(s => s.Now && !s.Bare))
        {
            yield return "No arrows from now: shoot at two distances at least.";
        }

        if (!HasBaseline)
        {
            yield return "No session from when all was well: without one, an old error of the tape looks like a change.";
        }

        double[] distances = [.. Stations.Where(s => s.Now && !s.Bare).Select(s => s.Distance.Meters)];
        if (distances.Length > 0 && distances.Max() < 1.3 * distances.Min())
        {
            yield return "All arrows from now were shot at about one distance: shoot at another, at least a third farther or nearer.";
        }

        if (ScatterThen.DegreesOfFreedom + ScatterNow.DegreesOfFreedom < 2)
        {
            yield return "One arrow at each station: how widely arrows scatter is not known; shoot three or more at each.";
        }
    }
}
