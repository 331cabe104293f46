namespace Ascham.Flight;

using Ascham.Numerics;
using UnitsNet;

/// <summary>One flight on numbers that carry their derivatives by its inputs.</summary>
readonly struct Sensitivity
{
    // Order of the inputs in the numbers. Drag is k itself where it is one constant, a factor where it follows the speed.
    internal const int Speed = 0, Elevation = 1, Azimuth = 2, Drag = 3, Density = 4, Tail = 5, Up = 6, Across = 7;

    readonly Gradient above, right, time, speed;

    Sensitivity(in PointMassSi mass, in LaunchSi launch, in Face face, in Arrival<Gradient> end)
    {
        Triple<Gradient> r = end.Moved, v = end.Velocity;
        Gradient x = r.X + Gradient.Of(launch.X), y = r.Y + Gradient.Of(launch.Y);
        above = face.Cosine * y - face.Sine * x;
        (time, right) = (end.Time, r.Z + Gradient.Of(launch.Z));
        speed = Gradient.SquareRoot(v.X * v.X + v.Y * v.Y + v.Z * v.Z);
        State = new(time.Value, x.Value, y.Value, right.Value, v.X.Value, v.Y.Value, v.Z.Value);

        // A face farther out by one metre is met 1/(speed toward it) later, on the same path.
        double later = 1 / (face.Cosine * State.Vx + face.Sine * State.Vy);
        ByRange = new((face.Cosine * State.Vy - face.Sine * State.Vx) * later, State.Vz * later, later, Quickening(mass, State, end.Wind) * later);
    }

    /// <summary>On the face; where the flight ended when it does not get there.</summary>
    internal StateSi State { get; }

    internal ImpactRate<Length> ByRange { get; }

    /// <summary>Height above the line of sight with its derivatives.</summary>
    internal Gradient Above => above;

    /// <summary>To the archer's right, with its derivatives.</summary>
    internal Gradient Right => right;

    /// <summary>Over the ground at the face, with its derivatives.</summary>
    internal Gradient FinalSpeed => speed;

    /// <summary>Flies.</summary>
    /// <param name="mass">The arrow and what it flies through.</param>
    /// <param name="launch">The launch.</param>
    /// <param name="face">The face, its distance counted from the origin.</param>
    /// <param name="steps">0 for steps by the built-in rule.</param>
    /// <param name="found">The derivatives.</param>
    /// <param name="reach">Distance of the farthest face met.</param>
    internal static Outcome Fly(in PointMassSi mass, in LaunchSi launch, in Face face, int steps, out Sensitivity found, out double reach)
    {
        Gradient one = Gradient.Of(1);
        Shot<Gradient> shot = new()
        {
            Velocity = Shot<Gradient>.Direct(Gradient.Input(launch.Speed, Speed), Turned(launch.Elevation, Elevation), Turned(launch.Azimuth, Azimuth)),
            Wind = new(Gradient.Input(mass.WindX, Tail), Gradient.Input(mass.WindY, Up), Gradient.Input(mass.WindZ, Across)),
            Varying = mass.Varying,
            Gravity = Gradient.Of(mass.Gravity),
            DragFactor = mass.Curve is null ? one : Gradient.Input(1, Drag),
            DensityFactor = Gradient.Input(1, Density),
            From = launch.From,
        };
        Outcome outcome = mass.Fly(shot, Gradient.Input(mass.K, Drag), face, steps, out Arrival<Gradient> end);
        reach = face.Cosine * launch.X + face.Sine * launch.Y + end.Reach;
        found = new(mass, launch, face, end);
        return outcome;
    }

    /// <summary>Rates by one input, times a factor.</summary>
    internal ImpactRate<T> By<T>(int input, double factor = 1)
        where T : IQuantity
        => new(factor * above[input], factor * right[input], factor * time[input], factor * speed[input]);

    static (Gradient Sine, Gradient Cosine) Turned(double angle, int input)
    {
        (double sin, double cos) = Math.SinCos(angle);
        Gradient turn = Gradient.Input(0, input);
        return (Gradient.Of(sin) + cos * turn, Gradient.Of(cos) - sin * turn);
    }

    // Rate of the speed over the ground in time: what drag and gravity have along it.
    static double Quickening(in PointMassSi mass, in StateSi v, Triple<Gradient> wind)
    {
        double ux = v.Vx - wind.X.Value, uy = v.Vy - wind.Y.Value, uz = v.Vz - wind.Z.Value, air = Math.Sqrt(ux * ux + uy * uy + uz * uz);
        double k = mass.Curve?.At(air, mass.Air!) ?? mass.K;
        return -(k * air * (ux * v.Vx + uy * v.Vy + uz * v.Vz) + mass.Gravity * v.Vy) / v.Speed;
    }
}
