namespace Ascham.Causes;

using Ascham.Flight;
using static System.Math;

/// <summary>What the known bow does when causes are at work, with slopes by every size; SI inside, sizes in their own units.</summary>
sealed class Forward
{
    internal const double Newtons = 4.4482216152605, Grain = 6.479891e-5; // exact: international pound and grain
    internal const double Mrad = 1e-3, Degree = PI / 180;

    /// <summary>Sizes that another outing does not share.</summary>
    internal static readonly CauseSize[] OfTheDay = [CauseSize.DayUp, CauseSize.DayRight, CauseSize.TailWind, CauseSize.CrossWind, CauseSize.Fatigue];

    readonly KnownBow bow;
    readonly double speed, weight, mass, moving, power, peepHeight, sideSet;

    internal Forward(KnownBow bow)
    {
        this.bow = bow;
        (speed, weight) = (bow.Sight.LaunchSpeed.MetersPerSecond, bow.PeakWeight.Newtons);
        (mass, moving) = (bow.ArrowMass.Kilograms, bow.VirtualMass.Kilograms);
        (power, peepHeight) = (bow.WeightPower, bow.Sight.Geometry.PeepHeight.Meters);
        sideSet = bow.Sight.SightAngle(bow.SideSetAt).Radians;
    }

    internal double LaunchSpeed => speed;

    internal double PeakWeight => weight;

    internal double ArrowMass => mass;

    /// <summary>Launch speed, m/s, and its slopes by peak weight and arrow mass.</summary>
    internal (double Speed, double PerPound, double PerGrain) Launch(ReadOnlySpan<double> sizes)
    {
        double f = Max(weight + Newtons * sizes[(int)CauseSize.PeakWeight], 0.1 * weight), m = Max(mass + Grain * sizes[(int)CauseSize.ArrowMass], 0.1 * mass);
        double v = speed * Sqrt((mass + moving) / (m + moving)) * Pow(f / weight, power / 2);
        return (v, v * power / 2 / f * Newtons, -v / 2 / (m + moving) * Grain);
    }

    /// <summary>Flies to a station.</summary>
    /// <param name="station">The station; a sight angle is kept with it.</param>
    /// <param name="sizes">Of all causes; shape (14).</param>
    /// <returns>The flight, its launch, and the slope of launch speed by peak weight and arrow mass.</returns>
    internal StationFlight Fly(in AimedStation station, ReadOnlySpan<double> sizes)
    {
        AimedStation aimed = station;
        double At(ReadOnlySpan<double> all, CauseSize size) => aimed.OtherOuting && OfTheDay.Contains(size) ? 0 : all[(int)size];
        var (v, perPound, perGrain) = Launch(sizes);
        (double sin, double cos) = SinCos(At(sizes, CauseSize.Cant) * Degree);
        double elevation = station.SightAngle * cos + Mrad * (At(sizes, CauseSize.Elevation) + At(sizes, CauseSize.DayUp) + station.Place * At(sizes, CauseSize.Fatigue));
        double azimuth = station.SightAngle * sin + Mrad * (At(sizes, CauseSize.Lateral) + At(sizes, CauseSize.DayRight))
            + (station.SightAngle - sideSet) * At(sizes, CauseSize.SightAxis) * Degree;

        double m = mass + Grain * At(sizes, CauseSize.ArrowMass);
        double drag = Exp(At(sizes, CauseSize.Air) + (station.Bare ? 0 : At(sizes, CauseSize.Drag))) * mass / Max(m, 0.1 * mass);
        PointMassSi air = PointMassSi.Of(bow.Sight.Drag.Times(drag), bow.Sight.Air, bow.Sight.Gravity.Si)
            with
        { WindX = At(sizes, CauseSize.TailWind), WindZ = At(sizes, CauseSize.CrossWind) };
        var launch = new LaunchSi(v, elevation, azimuth, 0, -peepHeight * cos, -peepHeight * sin);
        double distance = station.Distance * (1 + At(sizes, CauseSize.Distance));
        Outcome outcome = Sensitivity.Fly(air, launch, Face.Square(distance, 0), 0, out Sensitivity flight, out _);
        return new(outcome == Outcome.Met, flight, distance / (1 + At(sizes, CauseSize.Distance)))
        {
            PerPound = perPound,
            PerGrain = perGrain,
            DragPerGrain = -Grain / m,
            DragScale = air.Curve is null ? air.K : 1,
            ElevationPerDegree = -station.SightAngle * sin * Degree,
            AzimuthPerDegree = station.SightAngle * cos * Degree,
            UpPerDegree = peepHeight * sin * Degree,
            RightPerDegree = -peepHeight * cos * Degree,
            AzimuthPerTilt = (station.SightAngle - sideSet) * Degree,
            Place = station.Place,
            Bare = station.Bare,
            OtherOuting = station.OtherOuting,
        };
    }
}

/// <summary>A station as the forward model needs it.</summary>
/// <param name="Distance">m.</param>
/// <param name="SightAngle">Between line of sight and arrow, rad.</param>
/// <param name="Place">Mean number of arrows of the string shot before.</param>
/// <param name="Bare">Whether shot without vanes.</param>
/// <param name="OtherOuting">Whether shot on another day than the one asked about: what was of the day is then gone.</param>
readonly record struct AimedStation(double Distance, double SightAngle, double Place, bool Bare, bool OtherOuting = false);
