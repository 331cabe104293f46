namespace Ascham.Recordings;

using Ascham.Flight;
using UnitsNet;

/// <summary>Time of flight and its derivatives: s, s per m/s, s per unit of drag, s per m, s per m/s of tail wind.</summary>
readonly record struct TimeRates(double Time, double BySpeed, double ByDrag, double ByPath, double ByTail)
{
    /// <summary>At one speed all the way: what a mean speed means.</summary>
    internal static TimeRates Steady(double speed, double path) => new(path / speed, -path / (speed * speed), 0, 1 / speed, 0);

    /// <summary>
    /// Along the path that meets the line of sight at the face, by the flight itself; aimed anew for every change of an input, since the archer hits whatever the speed.
    /// </summary>
    internal static TimeRates Flown(in PointMassSi mass, double speed, double path, double inclination)
    {
        LaunchSi launch = new(speed, inclination + Math.Asin(Math.Clamp(mass.Gravity * path / (2 * speed * speed), -0.5, 0.5)) * Math.Cos(inclination));
        Face face = Face.Square(path, inclination);
        for (int i = 0; ; i++)
        {
            if (Sensitivity.Fly(mass, launch, face, 0, out Sensitivity flown, out _) != Outcome.Met)
            {
                throw new InvalidOperationException(
                    FormattableString.Invariant($"An arrow of {speed:0.#} m/s does not get {path:0.#} m far: the times do not look like those of an arrow. Check distances and onsets."));
            }

            double above = flown.Above.Value, byElevation = flown.Above[Sensitivity.Elevation];
            if (Math.Abs(above) < 1e-6 || i == 8)
            {
                ImpactRate<Angle> aim = flown.By<Angle>(Sensitivity.Elevation);
                double Aimed<T>(ImpactRate<T> rate)
                    where T : IQuantity => rate.Time - aim.Time * rate.Up / byElevation;
                return new(
                    flown.State.Time, Aimed(flown.By<Speed>(Sensitivity.Speed)), Aimed(flown.By<ReciprocalLength>(Sensitivity.Drag)), Aimed(flown.ByRange), Aimed(flown.By<Speed>(Sensitivity.Tail)));
            }

            launch = launch with { Elevation = launch.Elevation - above / byElevation };
        }
    }
}
