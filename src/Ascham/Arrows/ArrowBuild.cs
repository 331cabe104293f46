namespace Ascham.Arrows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>An arrow as it is built: its parts, and what scale and knife edge say of the whole.</summary>
/// <remarks>
/// <para>Positions count from the bottom of the nock slot towards the point. What was measured on the whole arrow overrides what
/// is added up from the parts; the differences are kept for show.</para>
/// <para><b>Model.</b> m = Σ mᵢ; x = Σ mᵢ xᵢ/m; I = Σ [mᵢ lᵢ²/12 + mᵢ (xᵢ − x)²]; front of centre = x/L − 1/2, with L from the slot to
/// the front end of the shaft. ASTM F1435 (arrow length, balance point on a knife edge; read in excerpts). Checks: docs/models/arrows.md.</para>
/// </remarks>
public sealed partial record ArrowBuild
{
    /// <summary>The parts, in any order; exactly one shaft and one point.</summary>
    /// <exception cref="ArgumentException">A part overlaps another or lies off the shaft, or shaft or point lacks or comes twice.</exception>
    public required IReadOnlyList<ArrowPart> Parts
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(Parts));
            ArrowPart[] copy = [.. value]; // a list that changes later must not pass by the check
            PartPlaces.Check(copy);
            field = copy;
        }
    }

    /// <summary>Mass of the complete arrow on a scale; positive. Overrides the sum of the parts.</summary>
    public Mass? WeighedMass
    {
        get;
        init
        {
            if (value is { } mass)
            {
                Require.Positive(mass.Kilograms, "kg", nameof(WeighedMass));
            }

            field = value;
        }
    }

    /// <summary>Where the complete arrow balances on a knife edge, from the bottom of the nock slot; on the arrow. Overrides the one worked out.</summary>
    public Length? MeasuredBalance { get; init; }

    /// <summary>Length by the trade standard: bottom of the nock slot to the front end of the shaft, without point.</summary>
    public Length Length => Shaft.To;

    /// <summary>From the end of the nock to the tip of the point, as far as the parts reach.</summary>
    public Length TotalLength => Front - Rear;

    /// <summary>The bare shaft.</summary>
    public ArrowPart Shaft => Parts.Single(p => p.Kind == PartKind.Shaft);

    /// <summary>The point.</summary>
    public ArrowPart Point => Parts.Single(p => p.Kind == PartKind.Point);

    /// <summary>Grains per inch of the bare shaft, as the trade states it.</summary>
    public double GrainsPerInch => Shaft.Mass.Grains / Shaft.Length.Inches;

    /// <summary>Sum of the parts.</summary>
    public Mass ComputedMass => Mass.FromKilograms(Parts.Sum(p => p.MassSi));

    /// <summary>Mass of the complete arrow: weighed if it was, else the sum of the parts.</summary>
    public Mass Mass => WeighedMass ?? ComputedMass;

    /// <summary>Weighed less computed mass: what the list of parts lacks; <see langword="null"/> when not weighed.</summary>
    public Mass? MassDifference => WeighedMass - ComputedMass;

    /// <summary>Balance point worked out from the parts, from the bottom of the nock slot.</summary>
    public Length ComputedBalance => UnitsNet.Length.FromMeters(Parts.Sum(p => p.MassSi * p.CentreSi) / ComputedMass.Kilograms);

    /// <summary>Balance point: measured if it was, else worked out; from the bottom of the nock slot.</summary>
    /// <exception cref="InvalidOperationException">The measured balance point is not on the arrow.</exception>
    public Length BalancePoint => MeasuredBalance is { } measured ? OnArrow(measured) : ComputedBalance;

    /// <summary>Measured less computed balance point; positive when it balances farther forward; <see langword="null"/> when not measured.</summary>
    public Length? BalanceDifference => MeasuredBalance - ComputedBalance;

    /// <summary>Front of centre (FOC): how far the balance point lies ahead of the middle of the standard length, over that length.</summary>
    /// <remarks>As the trade states it for points on an insert, where the standard length ends at the front of the shaft. A point glued over or into the shaft shifts the end that some measure from: compare only arrows measured alike.</remarks>
    public Ratio FrontOfCentre => Ratio.FromDecimalFractions(BalancePoint / Length - 0.5);

    /// <summary>Moment of inertia about the balance point, across the shaft.</summary>
    /// <remarks>From the parts; in proportion to the weighed mass when there is one. Each part is a thin rod or a point mass.</remarks>
    public MassMomentOfInertia TransverseInertia
    {
        get
        {
            double centre = ComputedBalance.Meters;
            double own = Parts.Sum(p => p.OwnInertia + p.MassSi * (p.CentreSi - centre) * (p.CentreSi - centre));
            return MassMomentOfInertia.FromKilogramSquareMeters(own * (Mass / ComputedMass));
        }
    }

    /// <summary>Radius of gyration about the balance point.</summary>
    public Length RadiusOfGyration => UnitsNet.Length.FromMeters(Math.Sqrt(TransverseInertia.KilogramSquareMeters / Mass.Kilograms));

    /// <summary>Whether two builds have the same parts in the same order and the same measured totals.</summary>
    /// <param name="other">The other.</param>
    /// <returns>The answer.</returns>
    public bool Equals(ArrowBuild? other) =>
        other is not null && Parts.SequenceEqual(other.Parts) && WeighedMass.Equals(other.WeighedMass) && MeasuredBalance.Equals(other.MeasuredBalance);

    /// <inheritdoc/>
    public override int GetHashCode() => Parts.Aggregate(HashCode.Combine(WeighedMass, MeasuredBalance), HashCode.Combine);

    internal Length Front => UnitsNet.Length.FromMeters(Parts.Max(p => p.To.Meters));

    internal Length Rear => UnitsNet.Length.FromMeters(Math.Min(0, Parts.Min(p => p.From.Meters)));

    Length OnArrow(Length balance) => balance.Meters >= Rear.Meters && balance.Meters <= Front.Meters
        ? balance
        : throw new InvalidOperationException(FormattableString.Invariant(
            $"MeasuredBalance must lie on the arrow, from {Rear.Millimeters:0.#} to {Front.Millimeters:0.#} mm from the bottom of the nock slot; it was {balance.Millimeters:0.#} mm. Measure again from the slot, not from the tip."));
}
