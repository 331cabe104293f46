namespace Ascham.Causes;

/// <summary>What an unknown cause might do: anything of a plausible size, to each station and each reading by itself and to all together.</summary>
static class SomethingElse
{
    // common practice, no source: wide enough to hold what the named causes do, so that it wins only where their shapes fail
    const double Common = 1.0, Apart = 0.6; // mrad
    const double Blunder = 6; // mrad, of one station: a sight left at another mark, another pin, a wrong distance
    const double OfReading = 0.02; // of the value

    /// <summary>Columns over the rows, times their standard deviations.</summary>
    internal static IEnumerable<double[]> Columns(Observations seen, Hypothesis hypothesis) =>
        hypothesis.OddStation is { } station ? AtOne(seen, station) : Anywhere(seen);

    static IEnumerable<double[]> AtOne(Observations seen, int station)
    {
        double sd = Forward.Mrad * Blunder * seen.Evidence.Stations[station].Distance.Meters;
        for (int axis = 0; axis < 2; axis++)
        {
            double[] alone = new double[seen.Count];
            alone[2 * station + axis] = sd;
            yield return alone;
        }
    }

    static IEnumerable<double[]> Anywhere(Observations seen)
    {
        double[] up = new double[seen.Count], right = new double[seen.Count];
        for (int i = 0; i < seen.Count; i++)
        {
            Row row = seen.Rows[i];
            if (!row.Now)
            {
                continue;
            }

            double[] alone = new double[seen.Count];
            if (row.Kind is RowKind.Up or RowKind.Right)
            {
                double perMrad = Forward.Mrad * seen.Evidence.Stations[i / 2].Distance.Meters;
                (row.Kind == RowKind.Up ? up : right)[i] = perMrad * Common;
                alone[i] = perMrad * Apart;
            }
            else
            {
                alone[i] = row.Kind == RowKind.Slope ? Common / 4 : OfReading * row.Reference;
            }

            yield return alone;
        }

        yield return up;
        yield return right;
    }
}
