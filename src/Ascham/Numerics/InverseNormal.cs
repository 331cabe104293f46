namespace Ascham.Numerics;

using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

/// <summary>The number below which a standard normal falls with a given probability.</summary>
/// <remarks>
/// M. J. Wichura, "Algorithm AS 241: The percentage points of the normal distribution", Appl. Statist. 37 (1988) 477-484,
/// routine PPND16: relative accuracy about 1e-16. It keeps the order of its arguments, which a quasi-random sequence needs.
/// </remarks>
static class InverseNormal
{
    // Highest power first. Within 0.425 of one half; then beyond it, by r = sqrt(-ln(tail probability)), to 5 and above.
    static ReadOnlySpan<double> Middle =>
    [
        2.5090809287301226727e+3, 3.3430575583588128105e+4, 6.7265770927008700853e+4, 4.5921953931549871457e+4,
        1.3731693765509461125e+4, 1.9715909503065514427e+3, 1.3314166789178437745e+2, 3.3871328727963666080e+0,
    ];

    static ReadOnlySpan<double> UnderMiddle =>
    [
        5.2264952788528545610e+3, 2.8729085735721942674e+4, 3.9307895800092710610e+4, 2.1213794301586595867e+4,
        5.3941960214247511077e+3, 6.8718700749205790830e+2, 4.2313330701600911252e+1, 1,
    ];

    static ReadOnlySpan<double> Tail =>
    [
        7.74545014278341407640e-4, 2.27238449892691845833e-2, 2.41780725177450611770e-1, 1.27045825245236838258e+0,
        3.64784832476320460504e+0, 5.76949722146069140550e+0, 4.63033784615654529590e+0, 1.42343711074968357734e+0,
    ];

    static ReadOnlySpan<double> UnderTail =>
    [
        1.05075007164441684324e-9, 5.47593808499534494600e-4, 1.51986665636164571966e-2, 1.48103976427480074590e-1,
        6.89767334985100004550e-1, 1.67638483018380384940e+0, 2.05319162663775882187e+0, 1,
    ];

    static ReadOnlySpan<double> FarTail =>
    [
        2.01033439929228813265e-7, 2.71155556874348757815e-5, 1.24266094738807843860e-3, 2.65321895265761230930e-2,
        2.96560571828504891230e-1, 1.78482653991729133580e+0, 5.46378491116411436990e+0, 6.65790464350110377720e+0,
    ];

    static ReadOnlySpan<double> UnderFarTail =>
    [
        2.04426310338993978564e-15, 1.42151175831644588870e-7, 1.84631831751005468180e-5, 7.86869131145613259100e-4,
        1.48753612908506148525e-2, 1.36929880922735805310e-1, 5.99832206555887937690e-1, 1,
    ];

    /// <summary>At probabilities in (0, 1).</summary>
    internal static Lanes At(Lanes probability)
    {
        Lanes q = probability - Lanes.Of(0.5);
        Lanes middle = Ratio(Middle, UnderMiddle, Lanes.Of(0.180625) - q * q);

        Lanes tail = Lanes.Lesser(probability, Lanes.Of(1) - probability), r = Lanes.SquareRoot(-1.0 * Elementary.Log(tail));
        Lanes near = Ratio(Tail, UnderTail, r - Lanes.Of(1.6)), far = Ratio(FarTail, UnderFarTail, r - Lanes.Of(5));
        return new(Pick(q.Low, middle.Low, r.Low, near.Low, far.Low), Pick(q.High, middle.High, r.High, near.High, far.High));
    }

    /// <summary>Turns even numbers in (0, 1) into normal ones, in place.</summary>
    internal static void Apply(Span<double> numbers)
    {
        for (; numbers.Length >= Lanes.Count; numbers = numbers[Lanes.Count..])
        {
            At(Lanes.From(numbers)).To(numbers);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static Lanes Ratio(ReadOnlySpan<double> over, ReadOnlySpan<double> under, Lanes x) => Elementary.Series(over, x) / Elementary.Series(under, x);

    static Vector256<double> Pick(Vector256<double> q, Vector256<double> middle, Vector256<double> r, Vector256<double> near, Vector256<double> far)
    {
        Vector256<double> tail = Vector256.ConditionalSelect(Vector256.LessThanOrEqual(r, Vector256.Create(5.0)), near, far);
        Vector256<double> signed = Vector256.ConditionalSelect(Vector256.LessThan(q, Vector256<double>.Zero), -tail, tail);
        return Vector256.ConditionalSelect(Vector256.LessThanOrEqual(Vector256.Abs(q), Vector256.Create(0.425)), q * middle, signed);
    }
}
