namespace Ascham.Causes;

/// <summary>What moves the observations though no cause is at work: the tape's own errors, the bow's numbers, the archer's ordinary days.</summary>
/// <remarks>
/// Each is a column over the rows times a standard deviation: together a covariance C Cᵀ. What they share between then and now cancels there by itself;
/// what is each day's own does not.
/// </remarks>
sealed class NuisanceShares
{
    readonly Dictionary<string, double[]> columns = [];
    readonly int count;

    internal NuisanceShares(Evidence evidence, CausePriors priors, IReadOnlyList<Row> rows, IReadOnlyList<AimedStation> stations, Forward forward)
    {
        count = rows.Count;
        double[] nothing = new double[CauseText.Sizes];
        for (int i = 0; i < rows.Count; i++)
        {
            Row row = rows[i];
            switch (row.Kind)
            {
                case RowKind.Up:
                    AddStation(i, evidence.Stations[i / 2], forward.Fly(stations[row.Station], nothing), evidence.Bow, priors);
                    break;
                case RowKind.Slope:
                    Column("slope")[i] = priors.HabitSlope;
                    Column(row.Now ? "slope now" : "slope then")[i] = priors.OrdinarySlope;
                    break;
                case RowKind.LaunchSpeed:
                    Column("speed")[i] = forward.LaunchSpeed * evidence.Bow.SpeedSd;
                    break;
                case RowKind.DownrangeSpeed:
                    StationFlight past = forward.Fly(stations[row.Station], nothing);
                    Column("speed")[i] = past.Flight.FinalSpeed[Flight.Sensitivity.Speed] * forward.LaunchSpeed * evidence.Bow.SpeedSd;
                    Column("drag")[i] = past.ByDrag(past.Flight.FinalSpeed) * evidence.Bow.DragSd;
                    break;
                case RowKind.PeakWeight:
                    Column("weight")[i] = priors.StatedWeightSd * forward.PeakWeight;
                    break;
                case RowKind.ArrowMass:
                    Column("mass")[i] = priors.StatedMassSd * forward.ArrowMass;
                    break;
            }
        }
    }

    /// <summary>The columns, each already times its standard deviation.</summary>
    internal IReadOnlyCollection<double[]> Columns => columns.Values;

    void AddStation(int i, StationMean station, in StationFlight known, KnownBow bow, CausePriors priors)
    {
        var up = known.Flight.Above;
        double perAngle = up[Flight.Sensitivity.Elevation] * Forward.Mrad, side = known.Flight.Right[Flight.Sensitivity.Azimuth] * Forward.Mrad;
        string at = FormattableString.Invariant($"{station.Distance.Meters:0.0} {station.SightAngle?.Radians:0.0000} {station.Bare}");
        double mark = station.Bare ? 10 * priors.MarkSd : priors.MarkSd; // bare shafts fly where they like, then as now
        Column("zero up")[i] = perAngle * priors.ZeroSd;
        Column("zero right")[i + 1] = side * priors.ZeroSd;
        Column("speed")[i] = up[Flight.Sensitivity.Speed] * bow.Sight.LaunchSpeed.MetersPerSecond * bow.SpeedSd;
        Column("drag")[i] = known.ByDrag(up) * bow.DragSd;
        Column("slope")[i] = perAngle * station.ShotBefore * priors.HabitSlope;
        Column(station.Now ? "slope now" : "slope then")[i] = perAngle * station.ShotBefore * priors.OrdinarySlope;
        Column("mark up " + at)[i] = perAngle * mark;
        Column("mark right " + at)[i + 1] = side * mark;
        Column("day up " + station.Session)[i] = perAngle * priors.OrdinaryDay;
        Column("day right " + station.Session)[i + 1] = side * priors.OrdinaryDay;
    }

    double[] Column(string name)
    {
        if (!columns.TryGetValue(name, out double[]? column))
        {
            columns.Add(name, column = new double[count]);
        }

        return column;
    }
}
