namespace Ascham.Groups;

using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;
using UnitsNet.Units;

/// <summary>The mean impact of one station.</summary>
/// <param name="Station">The station.</param>
/// <param name="Up">Mean height over the aim point; standard error of sampling; Student t interval with the pooled degrees of freedom.</param>
/// <param name="Right">Mean offset to the right; likewise.</param>
/// <param name="EdgeAssumed">Whether a missed arrow met an edge that was not given, so that the outermost recorded impact stood in for it.</param>
public sealed record StationCentre(StationGroup Station, Estimate<Length> Up, Estimate<Length> Right, bool EdgeAssumed)
{
    /// <summary>Mean height over the aim point.</summary>
    public Length MeanUp => Up.Value;

    /// <summary>Standard error of the mean height, from sampling alone: not the error of the distance or of setting the sight.</summary>
    public Length MeanUpStandardError => Up.StandardError;

    /// <summary>Mean offset to the right.</summary>
    public Length MeanRight => Right.Value;

    /// <summary>Standard error of the mean offset to the right, from sampling alone.</summary>
    public Length MeanRightStandardError => Right.StandardError;

    /// <summary>Number of shots used, struck or missed.</summary>
    public int Count => Station.Counted;
}

/// <summary>A station that could not be estimated.</summary>
/// <param name="Station">The station.</param>
/// <param name="Reason">Why.</param>
public sealed record StationSetAside(StationGroup Station, string Reason);

/// <summary>Mean impacts of several stations with one angular dispersion, missed arrows used as what they are.</summary>
/// <remarks>
/// <para><b>Model.</b> At each station impacts are normal about a centre of its own; sigma is one angle over all stations, its vertical and horizontal value
/// each its own. An arrow missed low brings in the probability of lying below the butt, and so on; a miss to the side says nothing about height.
/// Maximum likelihood for the centres; sigma from the likelihood adjusted for the centres, which without missed arrows is exactly s² = SS/(N − k).</para>
/// <para><b>Limits.</b> Same angular sigma at all stations. Called flyers are set aside. A miss of unknown direction sets its whole station aside.
/// An arrow lost both low and to the side is recorded by one direction and used by that alone.</para>
/// <para><b>Source.</b> Cohen (1959), Technometrics 1, 217-237 (censored normal samples); Cox and Reid (1987), J. R. Statist. Soc. B 49, 1-39 (adjustment).</para>
/// </remarks>
public sealed class StationCentres
{
    readonly CensoredNormal up;
    readonly CensoredNormal right;

    StationCentres(IReadOnlyList<StationGroup> used, IReadOnlyList<StationSetAside> setAside, StationOptions options)
    {
        (SetAside, CalledSetAside) = (setAside, used.Sum(s => s.CalledSetAside));
        up = Fitted(used, Axis.Vertical, options);
        right = Fitted(used, Axis.Horizontal, options);
        Vertical = SigmaOf(up, used, "heights", options.Level);
        Horizontal = SigmaOf(right, used, "offsets across", options.Level);
        double upT = Quantiles.StudentT(up.DegreesOfFreedom, options.Level), rightT = Quantiles.StudentT(right.DegreesOfFreedom, options.Level);
        Stations =
        [
            .. used.Select((s, i) => new StationCentre(
                s, MeanOf(up, s, i, upT, options.Level), MeanOf(right, s, i, rightT, options.Level), EdgeAssumedIn(s, options))),
        ];
    }

    /// <summary>The stations estimated, in the order given.</summary>
    public IReadOnlyList<StationCentre> Stations { get; }

    /// <summary>Stations that could not be estimated, each with its reason.</summary>
    public IReadOnlyList<StationSetAside> SetAside { get; }

    /// <summary>Sigma of heights, in milliradians, pooled within stations.</summary>
    public Sigma<Angle> Vertical { get; }

    /// <summary>Sigma across, in milliradians, pooled within stations.</summary>
    public Sigma<Angle> Horizontal { get; }

    /// <summary>Number of shots used, struck or missed, in the stations estimated.</summary>
    public int Count => Stations.Sum(s => s.Count);

    /// <summary>Number of called flyers set aside in the stations estimated.</summary>
    public int CalledSetAside { get; }

    /// <summary>Estimates the centres.</summary>
    /// <param name="stations">One station or more; at least one with two arrows on the face.</param>
    /// <param name="options">Edges of the butt and level of intervals; null when no edge is known.</param>
    /// <returns>Centres, sigmas, and what was set aside.</returns>
    /// <exception cref="ArgumentException">No station, or an impact beyond a given edge of the butt.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An edge is not positive, or the level not between 0 and 1.</exception>
    /// <exception cref="CannotTellException">No station can be estimated, or none has two impacts that differ, so that sigma is not known.</exception>
    public static StationCentres Fit(IReadOnlyList<StationGroup> stations, StationOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(stations);
        options ??= new();
        options.Check();
        if (stations.Count == 0)
        {
            throw new ArgumentException("stations must hold at least one station; it was empty.", nameof(stations));
        }

        List<StationGroup> used = [];
        List<StationSetAside> setAside = [];
        foreach (StationGroup station in stations)
        {
            CheckOnButt(station, options);
            if (WhyNot(station) is { } reason)
            {
                setAside.Add(new(station, reason));
            }
            else
            {
                used.Add(station);
            }
        }

        return used.Count > 0
            ? new(used, setAside, options)
            : throw new CannotTellException($"No station can be estimated. {string.Join(" ", setAside.Select(s => $"{s.Station}: {s.Reason}"))}");
    }

    /// <summary>Sampling covariance of the station means along one axis.</summary>
    /// <param name="axis">The axis.</param>
    /// <returns>
    /// m², rows and columns in the order of <see cref="Stations"/>; diagonal unless arrows missed at two stations or more, which then share the error of sigma.
    /// </returns>
    public double[,] Covariance(Axis axis)
    {
        CensoredNormal fit = axis == Axis.Vertical ? up : right;
        double[,] covariance = new double[Stations.Count, Stations.Count];
        for (int i = 0; i < Stations.Count; i++)
        {
            for (int j = 0; j < Stations.Count; j++)
            {
                covariance[i, j] = fit.Covariance(i, j) * Stations[i].Station.Distance.Meters * Stations[j].Station.Distance.Meters;
            }
        }

        return covariance;
    }

    static CensoredNormal Fitted(IReadOnlyList<StationGroup> used, Axis axis, StationOptions options) =>
        CensoredNormal.Fit([.. used.Select(s => Sample(s, axis, options))])
        ?? throw new CannotTellException(
            $"Dispersion cannot be told {(axis == Axis.Vertical ? "up the face" : "across the face")}: no station has two counted impacts that differ, "
            + "and without it there is no standard error. Shoot at least two arrows at one station.");

    static CensoredSample Sample(StationGroup station, Axis axis, StationOptions options)
    {
        double distance = station.Distance.Meters;
        bool vertical = axis == Axis.Vertical;
        var (low, high) = vertical ? (Miss.Low, Miss.High) : (Miss.Left, Miss.Right);
        double[] values = [.. station.Impacts.Select(i => Offset(i, vertical) / distance)];
        double[] seen = [.. station.Shots.Select(s => s.Impact).OfType<Impact>().Select(i => Offset(i, vertical))];
        var below = new Beyond(+1, (options.Edge(low) ?? seen.Min()) / distance, station.Misses.Count(m => m == low));
        var above = new Beyond(-1, (options.Edge(high) ?? seen.Max()) / distance, station.Misses.Count(m => m == high));
        Beyond[] beyond = [below, above];
        return new(values, [.. beyond.Where(b => b.Count > 0)]);
    }

    static double Offset(Impact impact, bool vertical) => (vertical ? impact.Up : impact.Right).Meters;

    static bool EdgeAssumedIn(StationGroup station, StationOptions options) => station.Misses.Any(m => options.Edge(m) is null);

    static string? WhyNot(StationGroup station)
    {
        if (station.Misses.Contains(Miss.Unknown))
        {
            return "an arrow missed and nobody saw where; a mean of the others would ignore it.";
        }

        return station.Impacts.Count > 0
            ? null
            : station.Missed > 0
                ? $"all {station.Missed} counted arrows missed; the centre has a bound but no estimate."
                : "all its arrows were called flyers; none counts.";
    }

    static void CheckOnButt(StationGroup station, StationOptions options)
    {
        foreach (Shot shot in station.Shots.Where(s => s.Impact is not null))
        {
            Impact impact = shot.Impact!.Value;
            if (impact.Up.Meters < options.Edge(Miss.Low) || impact.Up.Meters > options.Edge(Miss.High)
                || impact.Right.Meters < options.Edge(Miss.Left) || impact.Right.Meters > options.Edge(Miss.Right))
            {
                throw new ArgumentException(FormattableString.Invariant(
                    $"Shot {shot.Number} of {station} struck beyond a given edge of the butt (right {impact.Right}, up {impact.Up}). ")
                    + "Check the edges, or the record.", nameof(station));
            }
        }
    }

    static Sigma<Angle> SigmaOf(CensoredNormal fit, IReadOnlyList<StationGroup> used, string what, double level) =>
        Sigma<Angle>.From(
            fit.Sigma, fit.DegreesOfFreedom, used.Sum(s => s.Counted), level,
            FormattableString.Invariant($"s/c(nu) of {what} pooled within {used.Count} stations, missed arrows censored, normal"), Dispersion.Milliradians);

    static Estimate<Length> MeanOf(CensoredNormal fit, StationGroup station, int index, double multiplier, double level)
    {
        LengthUnit unit = station.Impacts[0].Up.Unit;
        Length InItsUnit(double radians) => Length.FromMeters(radians * station.Distance.Meters).ToUnit(unit);
        double mean = fit.Means[index], error = Math.Sqrt(fit.Covariance(index, index)), half = error * multiplier;
        return new(InItsUnit(mean), InItsUnit(error), InItsUnit(mean - half), InItsUnit(mean + half), level, station.Counted,
            "maximum likelihood, sigma pooled over stations, missed arrows censored");
    }
}
