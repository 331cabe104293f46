namespace Ascham.Arrows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>What turns an arrow into the wind, and about which point: its lifting parts, its shaft across the flow, its balance.</summary>
/// <remarks>
/// Good to about 10 % in lift and 2 % of the length in centre of pressure for rockets (NACA Report 1307); for arrows no
/// measurement with known vanes was found, and the vanes' <see cref="Fletching.Effectiveness"/> is the largest unknown.
/// Lengths are counted from the tip of the point. Equations and checks: docs/models/attack.md.
/// </remarks>
public sealed record Stability
{
    /// <summary>Outer diameter of the shaft; positive. Coefficients refer to its cross-section.</summary>
    public required Length ShaftDiameter { get; init => field = Positive(value, nameof(ShaftDiameter)); }

    /// <summary>Length of the whole arrow from the tip of the point to the end of the nock; positive.</summary>
    public required Length TotalLength { get; init => field = Positive(value, nameof(TotalLength)); }

    /// <summary>Where the complete arrow balances, from the tip of the point; positive.</summary>
    public required Length BalancePoint { get; init => field = Positive(value, nameof(BalancePoint)); }

    /// <summary>The point.</summary>
    public required LiftingPart Point
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(Point));
            field = value;
        }
    }

    /// <summary>The vanes; <see langword="null"/> for a bare shaft.</summary>
    public required Fletching? Fletching { get; init; }

    /// <summary>How the shaft adds to the lift of the vanes.</summary>
    public required CarryOver CarryOver { get; init; }

    /// <summary>
    /// Force of the shaft across the flow, per planform area and dynamic pressure of the cross component, K: 1.1
    /// (S. F. Hoerner, Fluid-Dynamic Drag, p. 3-11) to 1.2 (L. H. Jorgensen, NASA TR R-474, below the drag crisis); 0 leaves it out.
    /// </summary>
    public required double CrossflowConstant
    {
        get;
        init
        {
            Require.InRange(value, 0, 2, "", nameof(CrossflowConstant));
            field = value;
        }
    }

    /// <summary>Anything else that lifts: collars, tapers, the blades of a broadhead as measured or estimated. None when not given.</summary>
    public IReadOnlyList<LiftingPart> Others
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(Others));
            field = value;
        }
    } = [];

    /// <summary>All lifting parts: point, vanes, others.</summary>
    public IReadOnlyList<LiftingPart> Parts
        => [Point, .. Fletching is null ? [] : (LiftingPart[])[Fletching.Lift(ShaftDiameter, CarryOver)], .. Others];

    /// <summary>Normal-force slope of the whole arrow at small angles, C_Na per radian.</summary>
    public double Slope => Si.Sum0 / CrossSection;

    /// <summary>Where the side force acts at small angles, from the tip of the point; without crossflow.</summary>
    public Length CentreOfPressure => BalancePoint + Margin;

    /// <summary>How far the centre of pressure lies behind the balance point; negative when it lies ahead of it.</summary>
    public Length Margin
    {
        get
        {
            StabilitySi si = Si;
            return Length.FromMeters(si.Sum1 / si.Sum0);
        }
    }

    /// <summary>Whether a small angle of attack is pushed back: the centre of pressure lies behind the balance point.</summary>
    /// <remarks>A bare shaft is usually not stable in this sense: only at some degrees does the shaft across the flow push it back.</remarks>
    public bool IsStable => Si.Sum1 > 0;

    /// <summary>The same arrow with vanes that deliver another share of their lift.</summary>
    /// <param name="effectiveness">Above 0, up to 1.</param>
    /// <returns>The same, unless there are no vanes.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    public Stability With(Ratio effectiveness) => Fletching is null ? this : this with { Fletching = Fletching with { Effectiveness = effectiveness } };

    internal StabilitySi Si
    {
        get
        {
            double balance = BalancePoint.Meters, length = TotalLength.Meters;
            double s0 = 0, s1 = 0, s2 = 0;
            foreach (LiftingPart part in Parts)
            {
                double arm = part.PositionSi - balance;
                s0 += part.LiftSi;
                s1 += part.LiftSi * arm;
                s2 += part.LiftSi * arm * arm;
            }

            (double turning, double damping) = Fletching?.Roll(ShaftDiameter) ?? (0, 0);
            return new(s0, s1, s2, CrossflowConstant * ShaftDiameter.Meters * length, 0.5 * length - balance, turning, damping);
        }
    }

    double CrossSection => 0.25 * Math.PI * ShaftDiameter.Meters * ShaftDiameter.Meters;

    static Length Positive(Length value, string name)
    {
        Require.Positive(value.Meters, "m", name);
        return value;
    }
}

/// <summary>Stability in SI units; forces and moments over dynamic pressure.</summary>
/// <param name="Sum0">Sum of the lifts, m² per radian.</param>
/// <param name="Sum1">Sum of lift times arm behind the balance point, m³ per radian; positive when stable.</param>
/// <param name="Sum2">Sum of lift times arm squared, m⁴ per radian: pitch damping.</param>
/// <param name="Across">Crossflow constant times planform, m².</param>
/// <param name="AcrossArm">Its arm behind the balance point, m.</param>
/// <param name="RollTurning">Roll moment of the offset, m³.</param>
/// <param name="RollDamping">Roll moment per spin over speed, m⁴.</param>
readonly record struct StabilitySi(
    double Sum0, double Sum1, double Sum2, double Across, double AcrossArm, double RollTurning, double RollDamping);
