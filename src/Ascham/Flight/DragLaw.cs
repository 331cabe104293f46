namespace Ascham.Flight;

using Ascham.Arrows;
using Ascham.Numerics;

/// <summary>Drag as the integrator sees it: deceleration per square of the speed, k, at a speed through the air.</summary>
interface IDragLaw<T>
{
    T At(T airSpeed);

    /// <summary>How far the speed may change in one step, when it falls, rises, or may do either.</summary>
    double Room(double airSpeed, bool? slowing);

    /// <summary>Whether the law holds at this speed.</summary>
    bool Covers(double airSpeed);
}

/// <summary>The same k at every speed.</summary>
readonly struct ConstantDrag<T>(T k) : IDragLaw<T>
    where T : struct, IReal<T>
{
    readonly T k = k;

    public T At(T airSpeed) => k;

    public double Room(double airSpeed, bool? slowing) => double.PositiveInfinity;

    public bool Covers(double airSpeed) => true;
}

/// <summary>A drag coefficient that follows the Reynolds number of the shaft.</summary>
/// <param name="curve">The coefficient.</param>
/// <param name="perSpeed">Reynolds number per speed, d/nu.</param>
/// <param name="perCoefficient">k per coefficient, rho A/(2 m).</param>
readonly struct ReynoldsDrag<T, TCurve>(TCurve curve, T perSpeed, T perCoefficient) : IDragLaw<T>
    where T : struct, ITranscendental<T>
    where TCurve : struct, IReynoldsCurve
{
    readonly TCurve curve = curve;
    readonly T perSpeed = perSpeed, perCoefficient = perCoefficient;

    public T At(T airSpeed) => perCoefficient * curve.At(perSpeed * airSpeed);

    public double Room(double airSpeed, bool? slowing) => curve.Room(perSpeed.Value * airSpeed, slowing) / perSpeed.Value;

    public bool Covers(double airSpeed)
    {
        double reynolds = perSpeed.Value * airSpeed;
        return reynolds >= curve.Low && reynolds <= curve.High;
    }
}

/// <summary>Which way the speed goes.</summary>
static class SpeedTrend
{
    /// <summary>Whether it falls; <see langword="null"/> when drag and gravity pull against each other so evenly that it may turn within a step.</summary>
    /// <param name="braking">Deceleration by drag.</param>
    /// <param name="pull">Deceleration by gravity; negative when the path falls.</param>
    internal static bool? Slowing(double braking, double pull)
        => braking + Math.Min(pull, 2 * pull) > 0 ? true : 2 * braking + pull < 0 ? false : null;
}
