namespace Ascham.Arrows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>How hard the launch presses on an arrow as on a slender column: a relative index of dynamic spine.</summary>
/// <remarks>
/// <para><b>Model.</b> β = a Σ mᵢ wᵢ L²/(π² EI): held at nock and front, pressed together by the inertia of all that is ahead. The shaft
/// weighs w = π²/18.5687 = 0.5315 (a column under its own weight; S. Timoshenko and J. Gere print 18.6, from memory); a mass at ξ = x/L
/// weighs ξ + sin(2πξ)/(2π). Within 1.5 % of the buckling load worked out by elements (docs/models/arrows.md).</para>
/// <para><b>Meaning.</b> Above 1 is usual: the load lasts some 10 ms, about one swing of the shaft, too short to fold it. Compare two
/// setups by the ratio of their β; nothing here says which value shoots well, and no table of shafts follows from it.</para>
/// <para><b>Left out</b>: the course of the force in time, string and rest, release by fingers, which bends the shaft sideways.</para>
/// </remarks>
public sealed record ColumnLoad
{
    const double OwnWeight = Math.PI * Math.PI / 18.5687; // pinned at both ends under its own weight, worked out; see docs/models/arrows.md

    ColumnLoad(double ratio, double euler, double nock) => (Ratio, EulerLoad, NockForce) = (ratio, Force.FromNewtons(euler), Force.FromNewtons(nock));

    /// <summary>β: pressing force over the force at which a column would give way slowly; a pure number.</summary>
    public double Ratio { get; }

    /// <summary>π² EI/L²: the end load at which the shaft, pinned at both ends, would give way slowly.</summary>
    public Force EulerLoad { get; }

    /// <summary>Force between nock and shaft: acceleration times everything but the nock.</summary>
    public Force NockForce { get; }

    /// <summary>Works out the load.</summary>
    /// <param name="build">The arrow; its standard length is that of the column.</param>
    /// <param name="spine">Of its shaft.</param>
    /// <param name="acceleration">Along the arrow, at its largest: peak weight over arrow mass plus virtual mass; zero or more.</param>
    /// <returns>The load.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The acceleration is negative.</exception>
    public static ColumnLoad Of(ArrowBuild build, StaticSpine spine, Acceleration acceleration)
    {
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(spine);
        double a = Require.NotNegative(acceleration.MetersPerSecondSquared, "m/s²", nameof(acceleration));
        double length = build.Length.Meters, euler = Math.PI * Math.PI * spine.BendingStiffness / (length * length);
        double pressing = build.Parts.Sum(p => p.MassSi * (p.Kind == PartKind.Shaft ? OwnWeight : Weight(p.CentreSi / length)));
        double ahead = build.Parts.Where(p => p.Kind != PartKind.Nock).Sum(p => p.MassSi);
        return new(a * pressing / euler, euler, a * ahead);
    }

    static double Weight(double place)
    {
        double x = Math.Clamp(place, 0, 1);
        return x + Math.Sin(2 * Math.PI * x) / (2 * Math.PI);
    }
}
