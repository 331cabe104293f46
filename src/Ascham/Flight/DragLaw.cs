namespace Ascham.Flight;

using Ascham.Numerics;

/// <summary>Drag as the integrator sees it: deceleration per square of the speed, k, at a speed through the air.</summary>
interface IDragLaw<T>
{
    T At(T airSpeed);
}

/// <summary>The same k at every speed.</summary>
readonly struct ConstantDrag<T>(T k) : IDragLaw<T>
    where T : struct, IReal<T>
{
    readonly T k = k;

    public T At(T airSpeed) => k;
}
