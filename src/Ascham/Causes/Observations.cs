namespace Ascham.Causes;

using Ascham.Sights;

/// <summary>The evidence as a list of numbers: each a value, a variance in parts, what nobody is to blame for, and how causes move it.</summary>
/// <remarks>Rows: two for each station (up, right; m), one for each slope (mrad per arrow), one for each reading (SI).</remarks>
sealed class Observations
{
    readonly Forward forward;
    readonly List<AimedStation> stations = [];
    readonly List<Row> rows = [];
    readonly List<double[]> nuisance = [];

    internal Observations(Evidence evidence, CausePriors priors)
    {
        Evidence = evidence;
        Priors = priors;
        forward = new(evidence.Bow);
        foreach (StationMean station in evidence.Stations)
        {
            AddStation(station);
        }

        foreach (StringSlope slope in evidence.Slopes)
        {
            rows.Add(new(RowKind.Slope, slope.PerArrow, slope.Now, -1) { ThenPart = slope.Now ? 0 : 1 / slope.SumOfSquares, NowPart = slope.Now ? 1 / slope.SumOfSquares : 0 });
        }

        foreach (Reading reading in evidence.Readings)
        {
            AddReading(reading);
        }

        Shares = new NuisanceShares(evidence, priors, rows, stations, forward);
    }

    internal Evidence Evidence { get; }

    internal CausePriors Priors { get; }

    internal IReadOnlyList<Row> Rows => rows;

    internal int Count => rows.Count;

    internal NuisanceShares Shares { get; }

    internal Forward Forward => forward;

    /// <summary>What each row would read with these sizes and no noise, less what it would read of the known bow, and its slopes.</summary>
    /// <param name="sizes">Shape (14).</param>
    /// <param name="values">Shape (rows).</param>
    /// <param name="slopes">Row by row; shape (rows × 14).</param>
    /// <returns>Whether every flight gets to its face.</returns>
    internal bool Predict(ReadOnlySpan<double> sizes, Span<double> values, Span<double> slopes)
    {
        values.Clear();
        slopes.Clear();
        for (int i = 0; i < rows.Count; i++)
        {
            if (rows[i].Now && !PredictRow(i, sizes, values, slopes))
            {
                return false;
            }
        }

        return true;
    }

    bool PredictRow(int i, ReadOnlySpan<double> sizes, Span<double> values, Span<double> slopes)
    {
        Row row = rows[i];
        Span<double> mine = slopes.Slice(i * CauseText.Sizes, CauseText.Sizes);
        switch (row.Kind)
        {
            case RowKind.Up:
                StationFlight flight = forward.Fly(stations[row.Station], sizes);
                values[i] = flight.Flight.Above.Value - row.Reference;
                values[i + 1] = flight.Flight.Right.Value;
                flight.UpSlopes(mine);
                flight.RightSlopes(slopes.Slice((i + 1) * CauseText.Sizes, CauseText.Sizes));
                return flight.Met;
            case RowKind.Right:
                return true; // written with its height
            case RowKind.Slope:
                values[i] = sizes[(int)CauseSize.Fatigue];
                mine[(int)CauseSize.Fatigue] = 1;
                return true;
            case RowKind.LaunchSpeed:
                var (speed, perPound, perGrain) = forward.Launch(sizes);
                values[i] = speed - forward.LaunchSpeed;
                (mine[(int)CauseSize.PeakWeight], mine[(int)CauseSize.ArrowMass]) = (perPound, perGrain);
                return true;
            case RowKind.DownrangeSpeed:
                StationFlight past = forward.Fly(stations[row.Station], sizes);
                values[i] = past.Flight.FinalSpeed.Value - row.Reference;
                past.SpeedSlopes(mine);
                return past.Met;
            case RowKind.PeakWeight:
                values[i] = Forward.Newtons * sizes[(int)CauseSize.PeakWeight];
                mine[(int)CauseSize.PeakWeight] = Forward.Newtons;
                return true;
            default:
                values[i] = Forward.Grain * sizes[(int)CauseSize.ArrowMass];
                mine[(int)CauseSize.ArrowMass] = Forward.Grain;
                return true;
        }
    }

    void AddStation(StationMean station)
    {
        double distance = station.Distance.Meters;
        SightModel sight = Evidence.Bow.Sight;
        var aimed = new AimedStation(distance, (station.SightAngle ?? sight.SightAngle(station.Distance)).Radians, station.ShotBefore, station.Bare, station.Now && station.Session != Evidence.Outing);
        stations.Add(aimed);
        StationFlight known = forward.Fly(aimed, stackalloc double[CauseText.Sizes]);
        if (!known.Met)
        {
            throw new ArgumentException(FormattableString.Invariant($"The known bow does not reach {station.Distance} with the sight set as given; check the setting."), nameof(station));
        }

        double share = Forward.Mrad * Forward.Mrad * distance * distance / station.Arrows, up = station.UpSd.Meters, right = station.RightSd.Meters;
        double then = station.Now ? 0 : share, now = station.Now ? share : 0, reference = known.Flight.Above.Value;
        rows.Add(new(RowKind.Up, station.Up.Meters - reference, station.Now, stations.Count - 1) { Fixed = up * up, ThenPart = then, NowPart = now, Reference = reference });
        rows.Add(new(RowKind.Right, station.Right.Meters, station.Now, stations.Count - 1) { Fixed = right * right, ThenPart = then, NowPart = now });
    }

    void AddReading(Reading reading)
    {
        double sd = reading.SdSi;
        var (kind, reference, station) = reading.Kind switch
        {
            ReadingKind.LaunchSpeed => (RowKind.LaunchSpeed, forward.LaunchSpeed, -1),
            ReadingKind.PeakWeight => (RowKind.PeakWeight, forward.PeakWeight, -1),
            ReadingKind.ArrowMass => (RowKind.ArrowMass, forward.ArrowMass, -1),
            _ => Downrange(reading.DistanceSi),
        };
        rows.Add(new(kind, reading.Si - reference, reading.Now, station) { Fixed = sd * sd, Reference = reference });
    }

    (RowKind Kind, double Reference, int Station) Downrange(double distance)
    {
        stations.Add(new(distance, Evidence.Bow.Sight.SightAngle(UnitsNet.Length.FromMeters(distance)).Radians, 0, false));
        return (RowKind.DownrangeSpeed, forward.Fly(stations[^1], stackalloc double[CauseText.Sizes]).Flight.FinalSpeed.Value, stations.Count - 1);
    }
}

/// <summary>What a row of the observations is.</summary>
enum RowKind
{
    Up,
    Right,
    Slope,
    LaunchSpeed,
    DownrangeSpeed,
    PeakWeight,
    ArrowMass,
}

/// <summary>One observed number, less what the known bow would give.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Value">SI; mrad per arrow for a slope.</param>
/// <param name="Now">Whether causes act on it.</param>
/// <param name="Station">Index of the station flown, or −1.</param>
readonly record struct Row(RowKind Kind, double Value, bool Now, int Station)
{
    /// <summary>Variance that does not follow scatter.</summary>
    internal double Fixed { get; init; }

    /// <summary>Variance per squared mrad of the scatter of then, and of now.</summary>
    internal double ThenPart { get; init; }

    internal double NowPart { get; init; }

    /// <summary>What the known bow would give.</summary>
    internal double Reference { get; init; }
}
