namespace Ascham.Flight;

using System.Runtime.CompilerServices;
using Ascham.Numerics;

/// <summary>Where a path stands after part of its length: slowness and slope there, and their integrals up to there.</summary>
/// <remarks>Slowness in units of its first value, integrals per unit of length.</remarks>
readonly struct PathPoint<T>(T slowness, T slope, T time, T rise)
{
    internal readonly T Slowness = slowness, Slope = slope, Time = time, Rise = rise;
}

/// <summary>A path through still air under a constant k, as a power series in the level distance flown.</summary>
/// <remarks>
/// With level distance ξ, slowness w = 1/(level speed), slope s and R = sqrt(1 + s²) the equations of motion are
///     dw/dξ = k R w,   ds/dξ = -g w²,   R² = 1 + s².
/// Each is a product of series, so the coefficients of all three follow one after the other from Cauchy's rule
/// (the n-th coefficient of a b is the sum of a_i b_(n-i)). Here w is in units of its first value and ξ in units of
/// <see cref="Length"/>, so that the coefficients are the sizes of the terms at the far end and tell by themselves
/// how good the series is. Nothing is allocated: a path is a workspace, begun again for each arrow.
/// </remarks>
struct TaylorPath<T>
    where T : struct, IReal<T>
{
    /// <summary>The most terms a path can take beyond its constant.</summary>
    internal const int MostTerms = 13;

    static ReadOnlySpan<double> OneOver =>
        [0, 1, 1 / 2.0, 1 / 3.0, 1 / 4.0, 1 / 5.0, 1 / 6.0, 1 / 7.0, 1 / 8.0, 1 / 9.0, 1 / 10.0, 1 / 11.0, 1 / 12.0, 1 / 13.0, 1 / 14.0, 1 / 15.0];

    Terms slowness, slope, stretch; // w, s, R
    T drag, bend;                   // k ξ and -g w² ξ, w at the start
    T twiceSlope, perTwiceStretch;  // 2 s and 1/(2 R) at the start

    /// <summary>Number of the highest term.</summary>
    internal int Order { get; private set; }

    /// <summary>Level distance that the series covers.</summary>
    internal T Length { get; private set; }

    /// <summary>The highest terms of slowness and slope: what is left out is less while terms halve or better.</summary>
    internal readonly (T Slowness, T Slope) LastTerms => (slowness[Order], slope[Order]);

    /// <summary>Begins a path with its constant and first terms.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Begin(T startSlowness, T startSlope, T k, T gravity, T length)
    {
        Order = 1;
        Length = length;
        drag = k * length;
        bend = T.Of(0) - gravity * startSlowness * startSlowness * length;
        slowness[0] = T.Of(1);
        slope[0] = startSlope;
        stretch[0] = T.SquareRoot(T.MultiplyAdd(startSlope, startSlope, T.Of(1)));
        twiceSlope = 2.0 * startSlope;
        perTwiceStretch = T.Of(0.5) / stretch[0];
        slowness[1] = drag * stretch[0];
        slope[1] = bend;
        stretch[1] = perTwiceStretch * (twiceSlope * bend);
    }

    /// <summary>Adds terms up to an order.</summary>
    internal void Extend(int order)
    {
        Span<T> w = ((Span<T>)slowness)[..(order + 1)], s = ((Span<T>)slope)[..(order + 1)], r = ((Span<T>)stretch)[..(order + 1)];
        T wn = w[Order], sn = s[Order], rn = r[Order], r0 = r[0], r1 = r[1], s1 = s[1];
        for (int n = Order; n + 1 < w.Length; n++)
        {
            // The newest coefficients come last, so that the sums before them need not wait.
            T rw = T.Of(0), ww = T.Of(0), ss = T.Of(0), rr = T.Of(0);
            for (int i = 1, j = n - 1; i < n; i++, j--)
            {
                rw = T.MultiplyAdd(r[i], w[j], rw);
                ww = T.MultiplyAdd(w[i], w[j], ww);
                ss = T.MultiplyAdd(s[i], s[j + 1], ss);
                rr = T.MultiplyAdd(r[i], r[j + 1], rr);
            }

            ss = T.MultiplyAdd(sn, s1, ss) - T.MultiplyAdd(rn, r1, rr);
            double per = OneOver[n + 1];
            (wn, sn) = (per * drag * (T.MultiplyAdd(r0, wn, rw) + rn), per * bend * (2.0 * wn + ww));

            // Every coefficient of R² beyond the constant is that of s²; their next ones stand twice in it.
            rn = perTwiceStretch * T.MultiplyAdd(twiceSlope, sn, ss);
            (w[n + 1], s[n + 1], r[n + 1]) = (wn, sn, rn);
        }

        Order = order;
    }

    /// <summary>The sums of the series at a fraction of the length.</summary>
    internal readonly PathPoint<T> At(T fraction)
    {
        ReadOnlySpan<T> w = ((ReadOnlySpan<T>)slowness)[..(Order + 1)], s = ((ReadOnlySpan<T>)slope)[..(Order + 1)];
        T sw = T.Of(0), ss = T.Of(0), time = T.Of(0), rise = T.Of(0);
        for (int n = w.Length - 1; n >= 0; n--)
        {
            double per = OneOver[n + 1];
            sw = T.MultiplyAdd(sw, fraction, w[n]);
            ss = T.MultiplyAdd(ss, fraction, s[n]);
            time = T.MultiplyAdd(time, fraction, per * w[n]);
            rise = T.MultiplyAdd(rise, fraction, per * s[n]);
        }

        return new(sw, ss, fraction * time, fraction * rise);
    }

    /// <summary>At a point, by the fraction of the length: growth of the slowness in units of itself, growth of the slope in units of the slowness squared.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal readonly (T Slowness, T Slope) Rates(in PathPoint<T> at)
        => (drag * T.SquareRoot(T.MultiplyAdd(at.Slope, at.Slope, T.Of(1))), bend);

    [InlineArray(MostTerms + 1)]
    struct Terms
    {
        T first;
    }
}
