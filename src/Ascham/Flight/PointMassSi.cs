namespace Ascham.Flight;

using Ascham.Numerics;

/// <summary>A point mass in SI units, for rooms that solve for a launch: no quantities, nothing allocated.</summary>
/// <param name="K">Relative loss of speed per metre, 1/m.</param>
/// <param name="Gravity">m/s², positive downwards.</param>
/// <param name="WindX">Tail wind, m/s.</param>
/// <param name="WindY">Updraught, m/s.</param>
/// <param name="WindZ">Wind from left to right, m/s.</param>
readonly record struct PointMassSi(double K, double Gravity, double WindX, double WindY, double WindZ)
{
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
        double v = launch.Speed;
        var velocity = new Triple<Dual>(new(v * cos * cosA, -v * sin * cosA), new(v * sin, v * cos), new(v * cos * sinA, -v * sin * sinA));
        var wind = new Triple<Dual>(Dual.Of(WindX), Dual.Of(WindY), Dual.Of(WindZ));

        Outcome outcome = March.Fly(
            velocity, wind, Dual.Of(Gravity), new ConstantDrag<Dual>(Dual.Of(K)), FromLaunch(face, launch), 0,
            out Dual t, out Triple<Dual> r, out Triple<Dual> u, out _);
        state = new(t.Value, launch.X + r.X.Value, launch.Y + r.Y.Value, launch.Z + r.Z.Value, u.X.Value, u.Y.Value, u.Z.Value);
        above = state.Y * face.Cosine - state.X * face.Sine;
        abovePerElevation = r.Y.Slope * face.Cosine - r.X.Slope * face.Sine;
        return outcome;
    }

    internal Outcome Fly(in LaunchSi launch, in Face face, int steps, out StateSi state, out double reach)
    {
        (double sin, double cos) = Math.SinCos(launch.Elevation);
        (double sinA, double cosA) = launch.Azimuth == 0 ? (0, 1) : Math.SinCos(launch.Azimuth);
        double level = launch.Speed * cos;
        var velocity = new Triple<Real>(new(level * cosA), new(launch.Speed * sin), new(level * sinA));
        var wind = new Triple<Real>(new(WindX), new(WindY), new(WindZ));

        Face fromLaunch = FromLaunch(face, launch);
        if (steps == 0 && TaylorFlight.TryFly(velocity, wind, new(K), new(Gravity), fromLaunch, out Real seconds, out Triple<Real> flown, out Triple<Real> end))
        {
            reach = face.Distance;
            state = new(seconds.Value, launch.X + flown.X.Value, launch.Y + flown.Y.Value, launch.Z + flown.Z.Value, end.X.Value, end.Y.Value, end.Z.Value);
            return Outcome.Met;
        }

        Outcome outcome = March.Fly(
            velocity, wind, new Real(Gravity), new ConstantDrag<Real>(new(K)), fromLaunch, steps,
            out Real t, out Triple<Real> r, out Triple<Real> u, out double marched);
        reach = outcome == Outcome.Met ? face.Distance : face.Distance - fromLaunch.Distance + marched;
        state = new(t.Value, launch.X + r.X.Value, launch.Y + r.Y.Value, launch.Z + r.Z.Value, u.X.Value, u.Y.Value, u.Z.Value);
        return outcome;
    }

    static Face FromLaunch(in Face face, in LaunchSi launch)
        => new(face.Distance - (face.Cosine * launch.X + face.Sine * launch.Y), face.Sine, face.Cosine);
}
