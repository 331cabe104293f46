namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Numerics;

/// <summary>Velocity of the air as the integrator sees it, at a place from the origin.</summary>
interface IWindLaw<T>
    where T : struct, IReal<T>
{
    Triple<T> At(Triple<T> place);

    /// <summary>How far toward the face one may go from here in one step.</summary>
    /// <param name="place">Here.</param>
    /// <param name="perMetre">How the place moves per metre toward the face.</param>
    /// <param name="bend">How gravity bends the path: 1/m.</param>
    double Room(Triple<T> place, Triple<T> perMetre, double bend);
}

/// <summary>Wind by a power law of height.</summary>
readonly struct PowerLaw<T> : IWindLaw<T>
    where T : struct, ITranscendental<T>
{
    // Part of the height above the ground by which a step may rise or fall; by trial: 1e-6 m unless the path crosses the floor of the profile, 2e-6 m where it does.
    const double HeightFraction = 0.4;

    readonly Triple<T> uniform, atReference;
    readonly double reference, exponent, origin, slope;

    internal PowerLaw(WindProfile profile, Triple<T> uniform)
    {
        Wind wind = profile.AtReference;
        this.uniform = uniform;
        atReference = new(T.Of(wind.AlongSi), T.Of(wind.UpSi), T.Of(wind.AcrossSi));
        (reference, exponent) = (profile.ReferenceHeight.Meters, profile.Exponent);
        (origin, slope) = (profile.OriginAboveGround.Meters, Math.Tan(profile.GroundSlope.Radians));
    }

    public Triple<T> At(Triple<T> place)
    {
        T height = Height(place);
        T clear = height.Value > WindProfile.FloorSi ? height : T.Of(WindProfile.FloorSi);
        return uniform + T.Exp(exponent * T.Log(1 / reference * clear)) * atReference;
    }

    public double Room(Triple<T> place, Triple<T> perMetre, double bend)
    {
        // Where slope x + bend x²/2 makes up that part of the height.
        double part = HeightFraction * Math.Max(Height(place).Value, WindProfile.FloorSi), rise = Math.Abs(perMetre.Y.Value - slope * perMetre.X.Value);
        return 2 * part / (rise + Math.Sqrt(rise * rise + 2 * bend * part));
    }

    T Height(Triple<T> place) => T.Of(origin) + place.Y - slope * place.X;
}
