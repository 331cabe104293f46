namespace Ascham.Arrows;

using Ascham.Numerics;

/// <summary>A drag coefficient that follows the Reynolds number of the shaft diameter, as the integrator sees it.</summary>
interface IReynoldsCurve
{
    /// <summary>Where it holds.</summary>
    double Low { get; }

    /// <summary>Where it holds.</summary>
    double High { get; }

    /// <summary>The coefficient, referred to the cross-section of the shaft.</summary>
    T At<T>(T reynolds)
        where T : struct, ITranscendental<T>;

    /// <summary>How far the Reynolds number may move in one step of high order, when it falls, rises, or may do either.</summary>
    double Room(double reynolds, bool? falling);
}
