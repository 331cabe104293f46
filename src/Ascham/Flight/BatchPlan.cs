namespace Ascham.Flight;

using System.Runtime.CompilerServices;
using Ascham.Numerics;

/// <summary>The inputs that can differ from arrow to arrow, those that matter most first.</summary>
enum Input
{
    Speed,
    AimUp,
    AimRight,
    Drag,
    TailWind,
    WindFromLeft,
    Range,
    Cant,
    Mass,
    Updraught,
}

/// <summary>One arrow, or several side by side, ready to fly.</summary>
readonly struct BatchArrow<T>(Triple<T> velocity, Triple<T> wind, T drag, T range, T startUp, T startRight)
    where T : struct, IReal<T>
{
    internal readonly Triple<T> Velocity = velocity, Wind = wind;

    /// <summary>Drag, as a multiple of the planned one.</summary>
    internal readonly T Drag = drag;

    /// <summary>What every face is farther than planned from the launch point.</summary>
    internal readonly T Range = range;

    /// <summary>Where the flight starts on the axes of a face.</summary>
    internal readonly T StartUp = startUp, StartRight = startRight;
}

/// <summary>A batch in SI units: what all arrows share, and how the inputs of one follow from its draws.</summary>
sealed class BatchPlan
{
    /// <summary>Last terms of the series allowed: the error left is below 1e-6 m at 100 m. A single flight asks for more.</summary>
    internal const double Tolerance = 3e-7;

    // The order is that of an arrow this many sizes off in every input that bends the path more.
    const double OrderSizes = 3;

    readonly PointMassSi mass;
    readonly double speed, speedPerMass, inclination;
    readonly double toward, up, right;            // unit vector of the launch on the axes of a face
    readonly double startToward, startUp, startRight;
    readonly double[] size;

    internal BatchPlan(FlightBatch batch)
    {
        mass = batch.Flight.Si;
        inclination = batch.Inclination.Radians;
        (Sine, Cosine) = inclination == 0 ? (0, 1) : Math.SinCos(inclination);

        LaunchSi launch = batch.Launch.Si;
        (double sin, double cos) = Math.SinCos(launch.Elevation);
        (double sinA, double cosA) = Math.SinCos(launch.Azimuth);
        (speed, right, startRight) = (launch.Speed, cos * sinA, launch.Z);
        (toward, up) = OnFace(cos * cosA, sin);
        (startToward, startUp) = OnFace(launch.X, launch.Y);
        speedPerMass = batch.SpeedPerMass ?? 0;

        Inputs = batch.Inputs;
        size = [.. Inputs.Select(i => i.PerShift)];
        Distances = [.. batch.Faces.Select(f => f.Meters)];
        Farthest = Array.IndexOf(Distances, Distances.Max());
        Order = OrderNeeded();
    }

    /// <summary>How each input differs, in the order of <see cref="Input"/>.</summary>
    internal BatchInput[] Inputs { get; }

    /// <summary>From the origin to each face.</summary>
    internal double[] Distances { get; }

    /// <summary>Index of the farthest face.</summary>
    internal int Farthest { get; }

    /// <summary>Of the line of sight.</summary>
    internal double Sine { get; }

    /// <summary>Of the line of sight.</summary>
    internal double Cosine { get; }

    /// <summary>Order of the series.</summary>
    internal int Order { get; }

    internal double Gravity => mass.Gravity;

    /// <summary>Relative loss of speed per metre for the series; not a number, so that no series is trusted, where drag follows the speed or the wind varies along the way.</summary>
    internal double K => mass.Curve is null && mass.Varying is null ? mass.K : double.NaN;

    /// <summary>The inputs of an arrow from its draws.</summary>
    /// <param name="drawn">The shift of each input, in units of its size, in the order of <see cref="Input"/>.</param>
    /// <param name="apart">Distance from one input to the next among them.</param>
    /// <param name="arrow">Ready to fly.</param>
    internal void Arrow<T>(ReadOnlySpan<double> drawn, int apart, out BatchArrow<T> arrow)
        where T : struct, IReal<T>
    {
        T heavier = Of<T>(0, Input.Mass, drawn, apart);
        T v = Of<T>(speed, Input.Speed, drawn, apart) * T.MultiplyAdd(T.Of(speedPerMass), heavier, T.Of(1));
        T drag = Of<T>(1, Input.Drag, drawn, apart) / (T.Of(1) + heavier);
        var wind = new Triple<T>(
            Of<T>(mass.WindX, Input.TailWind, drawn, apart), Of<T>(mass.WindY, Input.Updraught, drawn, apart), Of<T>(mass.WindZ, Input.WindFromLeft, drawn, apart));

        // Cant turns launch and starting point about the line of sight; the aim is off on the axes of the face.
        var (sin, cos) = Elementary.SinCos(Of<T>(0, Input.Cant, drawn, apart));
        T du = Of<T>(0, Input.AimUp, drawn, apart) + (up * cos - right * sin), dr = Of<T>(0, Input.AimRight, drawn, apart) + (right * cos + up * sin);
        T scale = v / T.SquareRoot(T.MultiplyAdd(du, du, T.MultiplyAdd(dr, dr, T.Of(toward * toward))));
        T vn = toward * scale, vu = du * scale;
        var velocity = new Triple<T>(Cosine * vn - Sine * vu, Sine * vn + Cosine * vu, dr * scale);
        arrow = new(velocity, wind, drag, Of<T>(-startToward, Input.Range, drawn, apart), startUp * cos - startRight * sin, startRight * cos + startUp * sin);
    }

    /// <summary>The arrow without differences.</summary>
    internal Strike<double> Nominal(int face)
    {
        Arrow(new double[size.Length], 1, out BatchArrow<Real> arrow);
        return FlyStepByStep(arrow, face);
    }

    /// <summary>An arrow by the march, which serves every path; not a number where it does not get there.</summary>
    internal Strike<double> FlyStepByStep(in BatchArrow<Real> arrow, int face)
    {
        double u = arrow.StartUp.Value, range = arrow.Range.Value + startToward;
        var from = new Triple<Real>(new(Cosine * startToward - Sine * u), new(Sine * startToward + Cosine * u), arrow.StartRight);
        var shot = new Shot<Real>
        {
            Velocity = arrow.Velocity,
            Wind = arrow.Wind,
            Varying = mass.Varying,
            Gravity = new(mass.Gravity),
            DragFactor = arrow.Drag,
            DensityFactor = new(1),
            From = from,
        };
        Outcome outcome = mass.Fly(shot, mass.K * arrow.Drag, new(Distances[face] + range, Sine, Cosine), 0, out Arrival<Real> end);
        if (outcome != Outcome.Met)
        {
            return new(double.NaN, double.NaN, double.NaN, double.NaN);
        }

        OnFace(new SeriesArrival<Real>(end.Time, end.Moved, end.Velocity, default), arrow, out Strike<Real> strike);
        return new(strike.Right.Value, strike.Up.Value, strike.Time.Value, strike.Speed.Value);
    }

    /// <summary>An arrival on the axes of its face.</summary>
    internal void OnFace<T>(in SeriesArrival<T> arrival, in BatchArrow<T> arrow, out Strike<T> strike)
        where T : struct, IReal<T>
    {
        Triple<T> r = arrival.Moved, v = arrival.Arriving;
        strike = new(
            arrow.StartRight + r.Z,
            arrow.StartUp + (Cosine * r.Y - Sine * r.X),
            arrival.Time,
            T.SquareRoot(T.MultiplyAdd(v.X, v.X, T.MultiplyAdd(v.Y, v.Y, v.Z * v.Z))));
    }

    /// <summary>The lowest order at which a slow, draggy arrow against the wind is within tolerance.</summary>
    int OrderNeeded()
    {
        double[] drawn = new double[size.Length];
        foreach (Input input in (Input[])[Input.Speed, Input.TailWind, Input.Mass])
        {
            drawn[(int)input] = Inputs[(int)input].ShiftAt(-OrderSizes);
        }

        foreach (Input input in (Input[])[Input.Drag, Input.AimUp, Input.Range])
        {
            drawn[(int)input] = Inputs[(int)input].ShiftAt(OrderSizes);
        }

        Arrow(drawn, 1, out BatchArrow<Real> arrow);
        var flight = default(TaylorFlight<Real>);
        flight.Begin(arrow.Velocity, arrow.Wind, K * arrow.Drag, new(Gravity), new(Distances[Farthest] + arrow.Range.Value), Sine, Cosine, Tolerance);
        int order = 2;
        for (flight.Extend(order); !(flight.Margin.Value > 0) && order < TaylorPath<Real>.MostTerms; flight.Extend(order))
        {
            order++;
        }

        return order;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    T Of<T>(double middle, Input input, ReadOnlySpan<double> drawn, int apart)
        where T : struct, IReal<T>
        => T.MultiplyAdd(T.Of(size[(int)input]), T.From(drawn[((int)input * apart)..]), T.Of(middle));

    (double Toward, double Up) OnFace(double x, double y) => (Cosine * x + Sine * y, Cosine * y - Sine * x);
}

/// <summary>Where, when and how fast an arrow struck a face: right and up of the point the line of sight meets.</summary>
readonly struct Strike<T>(T right, T up, T time, T speed)
{
    internal readonly T Right = right, Up = up, Time = time, Speed = speed;
}
