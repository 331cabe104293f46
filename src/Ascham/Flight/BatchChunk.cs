namespace Ascham.Flight;

using Ascham.Numerics;

/// <summary>A workspace for some hundreds of arrows, small enough for the nearest cache: their draws, and where they strike.</summary>
/// <remarks>Structure of arrays: one row per input, and per face one row each of right, up, time and speed. One thread at a time.</remarks>
sealed class BatchChunk(BatchPlan plan, BatchDraws draws)
{
    /// <summary>Arrows per chunk.</summary>
    internal const int Arrows = 256;

    const int RowsPerFace = 4;

    readonly double[] drawn = new double[plan.Inputs.Length * Arrows]; // rows of inputs that do not differ stay zero
    readonly double[] struck = new double[plan.Distances.Length * RowsPerFace * Arrows];

    // Between the stages of a flight; each stage is a method small enough for the compiler to keep its numbers in registers.
    BatchArrow<Lanes> arrow;
    TaylorFlight<Lanes> flight;
    SeriesArrival<Lanes> arrival;
    Strike<Lanes> strike;

    internal ReadOnlySpan<double> Right(int face) => Row(face, 0);

    internal ReadOnlySpan<double> Up(int face) => Row(face, 1);

    internal ReadOnlySpan<double> Time(int face) => Row(face, 2);

    internal ReadOnlySpan<double> Speed(int face) => Row(face, 3);

    /// <summary>Draws and flies a chunk; what does not arrive, and what lies beyond the count, is not a number.</summary>
    internal void Fly(long chunk, int count)
    {
        draws.Fill(chunk, drawn);
        for (int i = 0; i < Arrows; i += Lanes.Count)
        {
            FlyTogether(i);
        }

        for (int row = 0; count < Arrows && row < plan.Distances.Length * RowsPerFace; row++)
        {
            struck.AsSpan(row * Arrows + count, Arrows - count).Fill(double.NaN);
        }
    }

    /// <summary>One arrow of the last chunk by plain numbers: the same as side by side, to the last bit.</summary>
    internal Strike<double> FlyAlone(int i, int face)
    {
        plan.Arrow(drawn.AsSpan(i), Arrows, out BatchArrow<Real> one);
        var series = default(TaylorFlight<Real>);
        Begin(ref series, one);
        Meet(series, one, face, out SeriesArrival<Real> end);
        plan.OnFace(end, one, out Strike<Real> there);
        return end.Trust.Value > 0 ? new(there.Right.Value, there.Up.Value, there.Time.Value, there.Speed.Value) : plan.FlyStepByStep(one, face);
    }

    void FlyTogether(int i)
    {
        plan.Arrow(drawn.AsSpan(i), Arrows, out arrow);
        Begin(ref flight, arrow);
        for (int face = 0; face < plan.Distances.Length; face++)
        {
            Meet(flight, arrow, face, out arrival);
            plan.OnFace(arrival, arrow, out strike);
            strike.Right.To(Row(face, 0)[i..]);
            strike.Up.To(Row(face, 1)[i..]);
            strike.Time.To(Row(face, 2)[i..]);
            strike.Speed.To(Row(face, 3)[i..]);
            if (!arrival.Trust.AllPositive)
            {
                FlyUntrusted(arrival.Trust, i, face);
            }
        }
    }

    void FlyUntrusted(Lanes trust, int i, int face)
    {
        for (int lane = 0; lane < Lanes.Count; lane++)
        {
            if (!(trust[lane] > 0))
            {
                plan.Arrow(drawn.AsSpan(i + lane), Arrows, out BatchArrow<Real> one);
                Strike<double> there = plan.FlyStepByStep(one, face);
                (Row(face, 0)[i + lane], Row(face, 1)[i + lane], Row(face, 2)[i + lane], Row(face, 3)[i + lane]) = (there.Right, there.Up, there.Time, there.Speed);
            }
        }
    }

    void Begin<T>(ref TaylorFlight<T> series, in BatchArrow<T> arrow)
        where T : struct, IReal<T>
    {
        T farthest = T.Of(plan.Distances[plan.Farthest]) + arrow.Range;
        series.Begin(arrow.Velocity, arrow.Wind, plan.K * arrow.Drag, T.Of(plan.Gravity), farthest, plan.Sine, plan.Cosine, BatchPlan.Tolerance);
        series.Extend(plan.Order);
    }

    void Meet<T>(in TaylorFlight<T> series, in BatchArrow<T> arrow, int face, out SeriesArrival<T> arrival)
        where T : struct, IReal<T>
    {
        if (face == plan.Farthest)
        {
            series.MeetFarthest(out arrival);
        }
        else
        {
            series.Meet(T.Of(plan.Distances[face]) + arrow.Range, out arrival);
        }
    }

    Span<double> Row(int face, int row) => struck.AsSpan((face * RowsPerFace + row) * Arrows, Arrows);
}
