namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Numerics;

/// <summary>A point mass in SI units, for rooms that solve for a launch: no quantities, nothing allocated.</summary>
/// <param name="K">Relative loss of speed per metre, 1/m; left aside when there is a curve.</param>
/// <param name="Gravity">m/s², positive downwards.</param>
/// <param name="WindX">Tail wind, m/s.</param>
/// <param name="WindY">Updraught, m/s.</param>
/// <param name="WindZ">Wind from left to right, m/s.</param>
readonly record struct PointMassSi(double K, double Gravity, double WindX, double WindY, double WindZ)
{
    /// <summary>Drag that follows the speed, instead of <see cref="K"/>.</summary>
    internal DragCurve? Curve { get; init; }

    /// <summary>The air, for a drag that follows the speed.</summary>
    internal Air? Air { get; init; }

    /// <summary>Wind that varies along the way, on top of the steady one.</summary>
    internal WindField? Varying { get; init; }

    /// <summary>Any drag in a given air and still air around it.</summary>
    internal static PointMassSi Of(Drag drag, Air air, double gravity) => drag.FollowsSpeed
        ? new(double.NaN, gravity, 0, 0, 0) { Curve = drag.Curve, Air = air }
        : new(drag.PerMetreIn(air), gravity, 0, 0, 0);

    /// <summary>The same in a wind.</summary>
    internal PointMassSi In(WindField wind) => wind is Wind steady
        ? this with { WindX = steady.AlongSi, WindY = steady.UpSi, WindZ = steady.AcrossSi }
        : this with { Varying = wind };

    /// <summary>Flies to a face square to a line from the origin.</summary>
    /// <param name="launch">The launch.</param>
    /// <param name="distance">From the origin to the face along the line, m.</param>
    /// <param name="inclination">Of the line, radians; 0 for an upright face.</param>
    /// <param name="state">On the face; where the flight ended when it does not get there.</param>
    /// <param name="reach">Distance of the farthest face met; <paramref name="distance"/> when it gets there.</param>
    /// <returns>Whether it gets there. Distances behind the launch point are <see cref="Outcome.Away"/>.</returns>
    internal Outcome Fly(in LaunchSi launch, double distance, double inclination, out StateSi state, out double reach)
        => Fly(launch, Face.Square(distance, inclination), 0, out state, out reach);

    /// <summary>Flies to a face, and tells how the height on it follows the launch angle.</summary>
    /// <param name="launch">The launch.</param>
    /// <param name="distance">From the origin to the face along the line, m.</param>
    /// <param name="inclination">Of the line, radians; 0 for an upright face.</param>
    /// <param name="state">On the face.</param>
    /// <param name="above">Height above the line, at right angles to it, m; positive above.</param>
    /// <param name="abovePerElevation">Its derivative by the launch elevation, m/rad.</param>
    /// <returns>Whether it gets there.</returns>
    internal Outcome FlyWithSlope(
        in LaunchSi launch, double distance, double inclination, out StateSi state, out double above, out double abovePerElevation)
    {
        Face face = Face.Square(distance, inclination);
        (double sin, double cos) = Math.SinCos(launch.Elevation);
        (double sinA, double cosA) = launch.Azimuth == 0 ? (0, 1) : Math.SinCos(launch.Azimuth);
        var velocity = Shot<Dual>.Direct(Dual.Of(launch.Speed), (new(sin, cos), new(cos, -sin)), (Dual.Of(sinA), Dual.Of(cosA)));
        Outcome outcome = Fly(launch, velocity, face, 0, out Arrival<Dual> end);

        Triple<Dual> r = end.Moved, v = end.Velocity;
        state = new(end.Time.Value, launch.X + r.X.Value, launch.Y + r.Y.Value, launch.Z + r.Z.Value, v.X.Value, v.Y.Value, v.Z.Value);
        above = state.Y * face.Cosine - state.X * face.Sine;
        abovePerElevation = r.Y.Slope * face.Cosine - r.X.Slope * face.Sine;
        return outcome;
    }

    internal Outcome Fly(in LaunchSi launch, in Face face, int steps, out StateSi state, out double reach)
    {
        (double sin, double cos) = Math.SinCos(launch.Elevation);
        (double sinA, double cosA) = launch.Azimuth == 0 ? (0, 1) : Math.SinCos(launch.Azimuth);
        var velocity = Shot<Real>.Direct(new(launch.Speed), (new(sin), new(cos)), (new(sinA), new(cosA)));
        bool bySeries = steps == 0 && Curve is null && Varying is null;
        double start = face.Cosine * launch.X + face.Sine * launch.Y;
        Outcome outcome = bySeries && TaylorFlight.TryFly(
                velocity, new(new(WindX), new(WindY), new(WindZ)), new(K), new(Gravity), new(face.Distance - start, face.Sine, face.Cosine), out Arrival<Real> end)
            ? Outcome.Met
            : Fly(launch, velocity, face, steps, out end);

        Triple<Real> r = end.Moved, v = end.Velocity;
        reach = outcome == Outcome.Met ? face.Distance : start + end.Reach;
        state = new(end.Time.Value, launch.X + r.X.Value, launch.Y + r.Y.Value, launch.Z + r.Z.Value, v.X.Value, v.Y.Value, v.Z.Value);
        return outcome;
    }

    /// <summary>Flies a shot whose inputs may carry derivatives.</summary>
    /// <param name="shot">All but the drag.</param>
    /// <param name="k">The constant, unless there is a curve.</param>
    /// <param name="face">The face, its distance counted from the origin.</param>
    /// <param name="steps">0 for steps by the built-in rule.</param>
    /// <param name="arrival">On the face; where the flight ended when it does not get there.</param>
    internal Outcome Fly<T>(in Shot<T> shot, T k, in Face face, int steps, out Arrival<T> arrival)
        where T : struct, ITranscendental<T>
        => Curve is null
            ? Flown.Fly(shot, new ConstantDrag<T>(k), face, steps, out arrival)
            : Curve.Fly(shot, Air!, face, steps, out arrival);

    Outcome Fly<T>(in LaunchSi launch, Triple<T> velocity, in Face face, int steps, out Arrival<T> arrival)
        where T : struct, ITranscendental<T>
    {
        var wind = new Triple<T>(T.Of(WindX), T.Of(WindY), T.Of(WindZ));
        if (Curve is null && Varying is null)
        {
            // The usual case, spared the way through the general one (a sixth of its time).
            double start = face.Cosine * launch.X + face.Sine * launch.Y;
            return Flown.Steadily(velocity, wind, T.Of(Gravity), new ConstantDrag<T>(T.Of(K)), new(face.Distance - start, face.Sine, face.Cosine), steps, out arrival);
        }

        Shot<T> shot = new()
        {
            Velocity = velocity,
            Wind = wind,
            Varying = Varying,
            Gravity = T.Of(Gravity),
            DragFactor = T.Of(1),
            DensityFactor = T.Of(1),
            From = launch.From,
        };
        return Fly(shot, T.Of(K), face, steps, out arrival);
    }
}
