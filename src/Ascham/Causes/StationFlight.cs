namespace Ascham.Causes;

using Ascham.Flight;
using Ascham.Numerics;

/// <summary>One flight to a station, and how its strike follows the sizes of causes.</summary>
/// <param name="Met">Whether it gets there.</param>
/// <param name="Flight">With derivatives by the inputs of the flight.</param>
/// <param name="Distance">As believed, m.</param>
readonly record struct StationFlight(bool Met, Sensitivity Flight, double Distance)
{
    internal double PerPound { get; init; }

    internal double PerGrain { get; init; }

    internal double DragPerGrain { get; init; }

    internal double DragScale { get; init; }

    internal double ElevationPerDegree { get; init; }

    internal double AzimuthPerDegree { get; init; }

    internal double UpPerDegree { get; init; }

    internal double RightPerDegree { get; init; }

    internal double AzimuthPerTilt { get; init; }

    internal double Place { get; init; }

    internal bool Bare { get; init; }

    internal bool OtherOuting { get; init; }

    /// <summary>Slopes of the height on the face by every size, m per unit.</summary>
    internal void UpSlopes(Span<double> slopes)
    {
        Chain(Flight.Above, Flight.ByRange.Up, slopes);
        slopes[(int)CauseSize.Cant] += UpPerDegree;
    }

    /// <summary>Slopes of the offset to the right.</summary>
    internal void RightSlopes(Span<double> slopes)
    {
        Chain(Flight.Right, Flight.ByRange.Right, slopes);
        slopes[(int)CauseSize.Cant] += RightPerDegree;
    }

    /// <summary>Slopes of the speed at the face.</summary>
    internal void SpeedSlopes(Span<double> slopes) => Chain(Flight.FinalSpeed, Flight.ByRange.Speed, slopes);

    /// <summary>Slope by the logarithm of drag.</summary>
    internal double ByDrag(Gradient of) => DragScale * of[Sensitivity.Drag];

    void Chain(Gradient of, double perRange, Span<double> slopes)
    {
        double drag = ByDrag(of), elevation = of[Sensitivity.Elevation], azimuth = of[Sensitivity.Azimuth], speed = of[Sensitivity.Speed];
        slopes[(int)CauseSize.PeakWeight] = speed * PerPound;
        slopes[(int)CauseSize.ArrowMass] = speed * PerGrain + drag * DragPerGrain;
        slopes[(int)CauseSize.Drag] = Bare ? 0 : drag;
        slopes[(int)CauseSize.Elevation] = slopes[(int)CauseSize.DayUp] = elevation * Forward.Mrad;
        slopes[(int)CauseSize.Lateral] = slopes[(int)CauseSize.DayRight] = azimuth * Forward.Mrad;
        slopes[(int)CauseSize.Cant] = elevation * ElevationPerDegree + azimuth * AzimuthPerDegree;
        slopes[(int)CauseSize.SightAxis] = azimuth * AzimuthPerTilt;
        slopes[(int)CauseSize.Air] = drag;
        slopes[(int)CauseSize.TailWind] = of[Sensitivity.Tail];
        slopes[(int)CauseSize.CrossWind] = of[Sensitivity.Across];
        slopes[(int)CauseSize.Distance] = perRange * Distance;
        slopes[(int)CauseSize.Fatigue] = elevation * Forward.Mrad * Place;
        foreach (CauseSize size in OtherOuting ? Forward.OfTheDay : [])
        {
            slopes[(int)size] = 0;
        }
    }
}
