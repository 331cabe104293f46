namespace Ascham.Causes;

using Ascham.Numerics;
using UnitsNet;

/// <summary>What each hypothesis expects of tests not yet made.</summary>
/// <remarks>The evidence is lengthened by every possible row; under each hypothesis all rows are jointly normal, and those not yet seen are predicted from those seen.</remarks>
sealed class Outlook
{
    const string OtherDay = "\u0001another day"; // no session of the user's can bear this name

    readonly Observations all;
    readonly Dictionary<(string Day, double Metres), int> rowOf = [];
    readonly Dictionary<ReadingKind, int> readingRow = [];
    readonly Predicted[] predicted;
    readonly (double Then, double Now) scatter;
    readonly Weighing weighing;

    internal Outlook(Ranking ranking, Weighed[] kept, TestCandidate[] candidates, TestCosts costs)
    {
        weighing = ranking.Weighing;
        scatter = weighing.Nodes.At(ScatterNodes.Middle);
        all = Lengthened(ranking, candidates, costs, out int[] seen);
        double[] structure = Structure(all.Shares.Columns);
        predicted = [.. kept.Select(w => Predict(w, w.Hypothesis.SomethingElse ? Structure([.. all.Shares.Columns, .. SomethingElse.Columns(all, w.Hypothesis)]) : structure, ranking.Seen, seen))];
    }

    /// <summary>Outcome of a test under every hypothesis kept.</summary>
    internal (double[] Means, double[] Covariances, int Count) Of(TestCandidate test)
    {
        List<(int Row, double Noise)> rows = [];
        if (test.Reading is { } kind)
        {
            rows.Add((readingRow[kind], all.Rows[readingRow[kind]].Fixed));
        }

        foreach (Length distance in test.Distances)
        {
            int up = rowOf[(test.AnotherDay ? OtherDay : "", distance.Meters)];
            foreach (int row in new[] { up, up + 1 })
            {
                Row single = all.Rows[row];
                rows.Add((row, weighing.NoiseOf(single with { NowPart = single.NowPart / test.PerDistance }, scatter.Then, scatter.Now)));
            }
        }

        int d = rows.Count;
        double[] means = new double[predicted.Length * d], covariances = new double[predicted.Length * d * d];
        for (int h = 0; h < predicted.Length; h++)
        {
            for (int i = 0; i < d; i++)
            {
                means[h * d + i] = predicted[h].Mean[rows[i].Row];
                for (int j = 0; j < d; j++)
                {
                    covariances[(h * d + i) * d + j] = predicted[h].Covariance[rows[i].Row * all.Count + rows[j].Row] + (i == j ? rows[i].Noise : 0);
                }
            }
        }

        return (means, covariances, d);
    }

    Observations Lengthened(Ranking ranking, TestCandidate[] candidates, TestCosts costs, out int[] seen)
    {
        Evidence known = ranking.Evidence;
        string today = known.Outing ?? OtherDay;
        List<StationMean> stations = [.. known.Stations];
        foreach (TestCandidate test in candidates)
        {
            foreach (Length distance in test.Distances)
            {
                var key = (test.AnotherDay ? OtherDay : "", distance.Meters);
                if (rowOf.TryAdd(key, 2 * stations.Count))
                {
                    stations.Add(ForeseenAt(distance, test, known) with { Session = test.AnotherDay ? OtherDay : today });
                }
            }
        }

        List<Reading> readings = [.. known.Readings];
        int firstReading = 2 * stations.Count + known.Slopes.Count;
        foreach (TestCandidate test in candidates.Where(c => c.Reading is not null))
        {
            Instrument instrument = costs.Instruments.First(i => i.Kind == test.Reading);
            readingRow[instrument.Kind] = firstReading + readings.Count;
            readings.Add(Foreseen(instrument, test.ReadAt, ranking));
        }

        int real = 2 * known.Stations.Count, rest = known.Slopes.Count + known.Readings.Count;
        seen = [.. Enumerable.Range(0, real), .. Enumerable.Range(2 * stations.Count, rest)];
        return new(known with { Stations = stations, Readings = readings }, ranking.Priors);
    }

    // With the setting and ranging errors of the nearest distance shot, taken as angles.
    static StationMean ForeseenAt(Length distance, TestCandidate test, Evidence known)
    {
        StationMean near = known.Stations.OrderBy(s => Math.Abs((s.Distance - distance).Meters)).ThenByDescending(s => s.Now).First();
        double scale = distance / near.Distance;
        return new()
        {
            Session = OtherDay,
            Now = true,
            Distance = distance,
            Up = Length.Zero,
            Right = Length.Zero,
            Arrows = 1,
            UpSd = near.UpSd * scale,
            RightSd = near.RightSd * scale,
            ShotBefore = (test.PerDistance - 1) / 2.0,
        };
    }

    static Reading Foreseen(Instrument instrument, Length? at, Ranking ranking)
    {
        KnownBow bow = ranking.Evidence.Bow;
        return instrument.Kind switch
        {
            ReadingKind.LaunchSpeed => Reading.LaunchSpeed(bow.Sight.LaunchSpeed, bow.Sight.LaunchSpeed * instrument.Sd, true),
            ReadingKind.DownrangeSpeed => Reading.DownrangeSpeed(bow.Sight.LaunchSpeed, bow.Sight.LaunchSpeed * instrument.Sd, at!.Value, true),
            ReadingKind.PeakWeight => Reading.PeakWeight(bow.PeakWeight, bow.PeakWeight * instrument.Sd, true),
            _ => Reading.ArrowMass(bow.ArrowMass, bow.ArrowMass * instrument.Sd, true),
        };
    }

    double[] Structure(IEnumerable<double[]> columns)
    {
        int n = all.Count;
        double[] v = new double[n * n];
        foreach (double[] column in columns)
        {
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n && column[i] != 0; j++)
                {
                    v[i * n + j] += column[i] * column[j];
                }
            }
        }

        return v;
    }

    // Mean and covariance of every row, what was seen given; noise of rows not seen left out.
    Predicted Predict(Weighed weighed, double[] structure, Observations known, int[] seen)
    {
        int n = all.Count, m = seen.Length, k = weighed.Hypothesis.Count;
        Linear at = Linear.At(all, weighed.Hypothesis, weighed.At.Sizes, new double[n]) ?? throw new InvalidOperationException("A flight that met its face no longer does.");
        double[] joint = [.. structure], mean = [.. at.Residual.Select(r => -r)], f = [.. at.Columns];
        for (int a = 0; a < k; a++)
        {
            Add(joint, f.AsSpan(a * n, n), weighed.Hypothesis.Sds[a]);
        }

        double[] l = new double[m * m], r = new double[m];
        for (int i = 0; i < m; i++)
        {
            r[i] = known.Rows[i].Value - mean[seen[i]];
            for (int j = 0; j <= i; j++)
            {
                l[i * m + j] = joint[seen[i] * n + seen[j]];
            }

            l[i * m + i] += weighing.NoiseOf(known.Rows[i], scatter.Then, scatter.Now);
        }

        SmallCholesky.TryFactor(l, m, out _); // it was factored when the evidence was weighed
        SmallCholesky.Forward(l, m, r);
        return Condition(joint, mean, l, r, seen);
    }

    Predicted Condition(double[] joint, double[] mean, double[] l, double[] r, int[] seen)
    {
        int n = all.Count, m = seen.Length;
        double[] w = new double[n * m]; // row i: L⁻¹ of the covariance of row i with what was seen
        for (int i = 0; i < n; i++)
        {
            Span<double> row = w.AsSpan(i * m, m);
            for (int j = 0; j < m; j++)
            {
                row[j] = joint[i * n + seen[j]];
            }

            SmallCholesky.Forward(l, m, row);
            for (int j = 0; j < m; j++)
            {
                mean[i] += row[j] * r[j];
            }

            for (int other = 0; other <= i; other++)
            {
                double shared = 0;
                for (int j = 0; j < m; j++)
                {
                    shared += row[j] * w[other * m + j];
                }

                joint[i * n + other] -= shared;
                joint[other * n + i] = joint[i * n + other];
            }
        }

        return new(mean, joint);
    }

    static void Add(double[] joint, ReadOnlySpan<double> column, double sd)
    {
        int n = column.Length;
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                joint[i * n + j] += sd * sd * column[i] * column[j];
            }
        }
    }

    /// <summary>Mean and covariance of every row under one hypothesis.</summary>
    readonly record struct Predicted(double[] Mean, double[] Covariance);
}
