namespace Ascham.Numerics;

/// <summary>A number with exponential and logarithm, for laws that need them; plain flight does not.</summary>
interface ITranscendental<T> : IReal<T>
    where T : struct, ITranscendental<T>
{
    static abstract T Exp(T a);

    /// <summary>Natural logarithm; of positive numbers.</summary>
    static abstract T Log(T a);
}
