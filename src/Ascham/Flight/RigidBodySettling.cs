namespace Ascham.Flight;

using Ascham.Quantities;
using UnitsNet;

public sealed partial record RigidBody
{
    // Looks per wavelength: the angle of attack peaks twice per wavelength, so eight looks per peak.
    const int Looks = 16;

    /// <summary>How this arrow swings at small angles, in closed form.</summary>
    public AngleOfAttackMotion Motion => new(Si);

    /// <summary>From which distance on the angle of attack stays within a limit, by flying the arrow.</summary>
    /// <param name="launch">The launch with its attitude.</param>
    /// <param name="within">The limit, 0.05° to 20°. The trim in the bending path, some hundredths of a degree, never goes away.</param>
    /// <param name="upTo">Level distance from the origin to which to look.</param>
    /// <returns>
    /// Level distance from the origin, zero-length flight included; <see langword="null"/> when the angle is not seen to stay
    /// within the limit over one whole wavelength before <paramref name="upTo"/>.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The limit is outside its range, or <paramref name="upTo"/> is behind the launch point.</exception>
    /// <exception cref="OutOfReachException">The arrow does not get to <paramref name="upTo"/>.</exception>
    /// <exception cref="TumbledException">The angle of attack passes 30° on the way.</exception>
    public Length? SettledFrom(RigidLaunch launch, Angle within, Length upTo)
    {
        double limit = Require.InRange(within.Degrees, 0.05, 20, "degrees", nameof(within)) * Math.PI / 180;
        RigidFlight flight = Start(launch, upTo, Angle.Zero), last = flight;
        double start = flight.Reach, wavelength = Motion.Wavelength?.Meters ?? upTo.Meters - start, look = wavelength / Looks;
        bool outside = flight.Attack > limit;
        for (int i = 1; flight.Reach < upTo.Meters; i++)
        {
            Fly(ref flight, launch, Length.FromMeters(Math.Min(start + i * look, upTo.Meters)), Angle.Zero);
            if (flight.Attack > limit)
            {
                (outside, last) = (true, flight);
            }
        }

        double settled = outside ? Crossing(last, Math.Min(last.Reach + look, upTo.Meters), limit) : start;
        return settled + wavelength <= upTo.Meters ? Length.FromMeters(settled) : null;
    }

    // Between a place outside the limit and one inside, by halving.
    static double Crossing(RigidFlight outside, double inside, double limit)
    {
        while (inside - outside.Reach > 1e-4)
        {
            RigidFlight middle = outside;
            double at = 0.5 * (outside.Reach + inside);
            if (middle.To(at) != RigidOutcome.Met || middle.Attack > limit)
            {
                outside = middle;
            }
            else
            {
                inside = at;
            }
        }

        return inside;
    }
}
