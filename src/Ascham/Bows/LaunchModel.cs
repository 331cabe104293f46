namespace Ascham.Bows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Launch speed of a bow at another arrow mass, peak weight or draw length, anchored at one speed that is known.</summary>
/// <remarks>
/// <para><b>Model.</b> v = v₀ √((m₀ + K)/(m + K)) (F/F₀)^(p/2) (s/s₀)^(q/2), K the virtual mass, F the peak weight, s the power stroke.
/// p = 1 ± 0.15: the shape of the draw curve changes a little with the limb bolts. Compounds: q = 1.3 ± 0.25: stroke added at the plateau of a
/// trapezoid gives 1.22 of the stored and 1.43 of the launched energy. Recurves and longbows: q = 1 ± 0.15; their peak weight is the force at full draw and grows
/// with it, so that another draw length must come with its own peak weight. K may change by ± 0.06 of any change of arrow mass
/// (measured recurve limbs: 0.058). The figures after ± are standard deviations.</para>
/// <para><b>Range.</b> Half to twice the known mass and weight, ±4 in of stroke; the interval grows on the way there.</para>
/// <para><b>Left out.</b> Arrow flex, release, string, temperature, timing of cams, error of the bow scale.</para>
/// <para><b>Safety.</b> Refuses every loading below <see cref="Floor"/>, but for the known one.</para>
/// </remarks>
public sealed partial record LaunchModel
{
    /// <summary>Standard deviation of p, the power with which launch energy follows peak weight, about 1.</summary>
    public const double WeightPowerSd = 0.15; // judged, no source

    /// <summary>Power with which the launch energy of a compound follows the power stroke, peak weight unchanged.</summary>
    public const double StrokePower = 1.3;

    /// <summary>Its standard deviation.</summary>
    public const double StrokePowerSd = 0.25;

    /// <summary>Standard deviation of the same power, 1, of recurves and longbows, whose peak weight grows along.</summary>
    public const double StrokePowerWithoutLetOffSd = 0.15; // judged, no source: the share of peak times stroke that is stored changes little with the draw

    /// <summary>Standard deviation of the change of virtual mass per change of arrow mass, about zero.</summary>
    public const double VirtualMassGrowthSd = 0.06;

    /// <summary>The loading at which the speed is known.</summary>
    public required Loading Known { get; init; }

    /// <summary>The speed known there, as the arrow leaves; positive, up to 200 m/s.</summary>
    public required Speed KnownSpeed
    {
        get;
        init
        {
            Require.InRange(value.MetersPerSecond, double.Epsilon, 200, "m/s", nameof(KnownSpeed));
            field = value;
        }
    }

    /// <summary>Standard deviation of that speed as a value, not from shot to shot; 0 to 50 m/s.</summary>
    public required Speed KnownSpeedSd
    {
        get;
        init
        {
            Require.InRange(value.MetersPerSecond, 0, 50, "m/s", nameof(KnownSpeedSd));
            field = value;
        }
    }

    /// <summary>K; 0 to 200 g.</summary>
    public required Mass VirtualMass
    {
        get;
        init
        {
            Require.InRange(value.Grams, 0, 200, "g", nameof(VirtualMass));
            field = value;
        }
    }

    /// <summary>Its standard deviation; 0 to 200 g.</summary>
    public required Mass VirtualMassSd
    {
        get;
        init
        {
            Require.InRange(value.Grams, 0, 200, "g", nameof(VirtualMassSd));
            field = value;
        }
    }

    /// <summary>String at rest to grip pivot; needed only where the draw length changes. Positive, up to 1 m.</summary>
    public Length? BraceHeight
    {
        get;
        init
        {
            if (value is { } height)
            {
                Require.InRange(height.Meters, double.Epsilon, 1, "m", nameof(BraceHeight));
            }

            field = value;
        }
    }

    /// <summary>What sort of bow it is; needed only where the draw length changes.</summary>
    public BowKind? Kind { get; init; }

    /// <summary>The lightest arrow per peak weight that is computed.</summary>
    public required MassFloor Floor { get; init; }

    /// <summary>Where speed and virtual mass are from, in a few words.</summary>
    public required string HowObtained { get; init; }

    /// <summary>Launch speed at a loading.</summary>
    /// <param name="loading">The loading.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The speed, with what known speed, virtual mass and model leave open.</returns>
    /// <exception cref="BeyondCautionException">The arrow is too light for the peak weight.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The loading is outside the range of the model, or the level outside its own.</exception>
    /// <exception cref="InvalidOperationException">The draw length changes but kind, brace height or known draw length is not given; or, of a recurve or longbow, the peak weight does not change with it.</exception>
    public Estimate<Speed> SpeedAt(Loading loading, double level)
    {
        Launched at = Launch(loading);
        double relative = Norm(at.Relative) / at.Speed;
        return Bounds.Logarithmic(at.Speed, relative, Bounds.Multiplier(level), level, 1, HowObtained).Map(v => Speed.FromMetersPerSecond(v));
    }

    /// <summary>Change of launch speed from one loading to another. Errors that both share cancel, so it is far surer than either speed.</summary>
    /// <param name="from">From this loading.</param>
    /// <param name="to">To this loading.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>Speed at the second less that at the first.</returns>
    /// <exception cref="BeyondCautionException">In one of them the arrow is too light for the peak weight.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A loading is outside the range of the model, or the level outside its own.</exception>
    /// <exception cref="InvalidOperationException">The draw length changes but kind, brace height or known draw length is not given; or, of a recurve or longbow, the peak weight does not change with it.</exception>
    public Estimate<Speed> SpeedChange(Loading from, Loading to, double level)
    {
        Launched a = Launch(from), b = Launch(to);
        double error = Norm([.. b.Relative.Zip(a.Relative, (y, x) => y - x)]);
        return Bounds.Normal(b.Speed - a.Speed, error, level, 1, HowObtained).Map(v => Speed.FromMetersPerSecond(v));
    }

    /// <summary>Largest acceleration along the arrow: peak weight over arrow mass plus virtual mass; what <c>ColumnLoad</c> asks for.</summary>
    /// <param name="loading">The loading.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The acceleration, with what the virtual mass leaves open.</returns>
    /// <exception cref="BeyondCautionException">The arrow is too light for the peak weight.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The loading is outside the range of the model, or the level outside its own.</exception>
    public Estimate<Acceleration> PeakAcceleration(Loading loading, double level)
    {
        Launched at = Launch(loading);
        double a = loading.PeakWeight.Newtons / at.Moving, relative = VirtualMassSd.Kilograms / at.Moving;
        return Bounds.Logarithmic(a, relative, Bounds.Multiplier(level), level, 1, "peak weight over arrow plus virtual mass").Map(x => Acceleration.FromMetersPerSecondSquared(x));
    }

    /// <summary>Share of the launch energy that the arrow takes: m/(m + K).</summary>
    /// <param name="arrowMass">Mass of the complete arrow; positive.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The share.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not positive, or the level outside its range.</exception>
    public Estimate<Ratio> Efficiency(Mass arrowMass, double level)
    {
        var k = Bounds.Normal(VirtualMass.Kilograms, VirtualMassSd.Kilograms, level, 1, HowObtained);
        return VirtualMassFit.Efficient(arrowMass, (k with { Low = Math.Max(0, k.Low) }).Map(x => Mass.FromKilograms(x)));
    }

    // Speed, moving mass m + K, and how the speed moves by one standard deviation of each unknown.
    readonly record struct Launched(double Speed, double Moving, double[] Relative);

    Launched Launch(Loading loading)
    {
        ArgumentNullException.ThrowIfNull(loading);
        if (loading != Known)
        {
            Floor.Guard(loading);
        }

        double m = loading.ArrowMass.Kilograms, m0 = Known.ArrowMass.Kilograms, k0 = VirtualMass.Kilograms;
        Require.InRange(m / m0, 0.5, 2, "times the known arrow mass", "ArrowMass");
        double weight = Require.InRange(loading.PeakWeight / Known.PeakWeight, 0.5, 2, "times the known peak weight", "PeakWeight");
        (double power, double powerSd) = Kind == BowKind.Compound ? (StrokePower, StrokePowerSd) : (1, StrokePowerWithoutLetOffSd);
        double moving = m + k0 + (loading.StringMass - Known.StringMass).Kilograms, known = m0 + k0, stroke = Stroke(loading);
        double v = KnownSpeed.MetersPerSecond * Math.Sqrt(known / Require.Positive(moving, "kg", "arrow plus virtual mass") * weight * Math.Pow(stroke, power));
        return new(v, moving,
        [
            v * KnownSpeedSd / KnownSpeed,
            v * 0.5 * (1 / known - 1 / moving) * VirtualMassSd.Kilograms,
            v * 0.5 * (m - m0) / moving * VirtualMassGrowthSd,
            v * 0.5 * Math.Log(weight) * WeightPowerSd,
            v * 0.5 * Math.Log(stroke) * powerSd,
        ]);
    }

    double Stroke(Loading loading)
    {
        if (loading.DrawLength is not { } draw || (Known.DrawLength is { } same && draw.Meters == same.Meters))
        {
            return 1;
        }

        if (Known.DrawLength is not { } known || BraceHeight is not { } brace)
        {
            throw new InvalidOperationException("What another draw length does cannot be told: the known draw length and the brace height are needed. Measure both.");
        }

        if (Kind is null)
        {
            throw new InvalidOperationException("What another draw length does cannot be told: it is not the same for a compound and for a recurve or longbow. State the Kind.");
        }

        if (Kind != BowKind.Compound && Math.Abs(loading.PeakWeight / Known.PeakWeight - 1) < 1e-9)
        {
            throw new InvalidOperationException("What another draw length does cannot be told: the peak weight of a recurve or longbow grows with the draw. Read it on a scale at the new draw length and state that PeakWeight.");
        }

        double before = Require.Positive((known - brace - DrawCurve.PivotAllowance).Meters, "m", "known power stroke");
        double change = Require.InRange((draw - known).Meters, -4 * 0.0254 * (1 + 1e-9), 4 * 0.0254 * (1 + 1e-9), "m", "change of DrawLength");
        return Require.Positive(1 + change / before, "times the known stroke", "power stroke");
    }

    static double Norm(double[] parts) => Math.Sqrt(parts.Sum(x => x * x));
}
