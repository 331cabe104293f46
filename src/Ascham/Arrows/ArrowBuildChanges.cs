namespace Ascham.Arrows;

using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using UnitsNet;

/// <remarks>Changing the point, solving for it, how sure the balance is, and handing the build to flight and stability.</remarks>
public sealed partial record ArrowBuild
{
    /// <summary>The same arrow with a point of another mass at the same place.</summary>
    /// <param name="mass">Of the point; zero or more.</param>
    /// <returns>The arrow; measured totals are carried over by the change of the point.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is outside its range.</exception>
    public ArrowBuild WithPoint(Mass mass) => With(Point, mass);

    /// <summary>The same arrow with one part of another mass at the same place.</summary>
    /// <param name="part">One of <see cref="Parts"/>.</param>
    /// <param name="mass">Its new mass; zero or more.</param>
    /// <returns>The arrow; measured totals are carried over by the change.</returns>
    /// <exception cref="ArgumentException">The part is not one of this arrow.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The mass is outside its range.</exception>
    public ArrowBuild With(ArrowPart part, Mass mass)
    {
        ArgumentNullException.ThrowIfNull(part);
        int place = Parts.ToList().IndexOf(part);
        if (place < 0)
        {
            throw new ArgumentException($"The part \"{part.Name}\" is not one of this arrow.", nameof(part));
        }

        ArrowPart changed = part with { Mass = mass };
        return Carried([.. Parts.Select((p, i) => i == place ? changed : p)], changed.MassSi - part.MassSi, part.CentreSi);
    }

    /// <summary>The same arrow with one more part.</summary>
    /// <param name="part">The part, not in the place of another.</param>
    /// <returns>The arrow; measured totals are carried over by the change.</returns>
    /// <exception cref="ArgumentException">The part overlaps another, lies off the shaft, or is a second shaft or point.</exception>
    public ArrowBuild Plus(ArrowPart part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return Carried([.. Parts, part], part.MassSi, part.CentreSi);
    }

    ArrowBuild Carried(IReadOnlyList<ArrowPart> parts, double more, double at)
    {
        double total = Mass.Kilograms + more;
        return this with
        {
            Parts = parts,
            WeighedMass = WeighedMass is null ? null : Mass.FromKilograms(total),
            MeasuredBalance = MeasuredBalance is null ? null : UnitsNet.Length.FromMeters((Mass.Kilograms * BalancePoint.Meters + more * at) / total),
        };
    }

    /// <summary>Finds the mass of the point that gives a wanted front of centre.</summary>
    /// <param name="wanted">Front of centre; -50 % to +50 %.</param>
    /// <returns>Mass of the point, at its place; zero or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No point at this place gives it; the message says what the lightest gives.</exception>
    public Mass PointForFrontOfCentre(Ratio wanted)
    {
        double share = Require.InRange(wanted.DecimalFractions, -0.5, 0.5, "", nameof(wanted));
        ArrowPart point = Point;
        double total = (MeasuredBalance is null ? ComputedMass : Mass).Kilograms; // without a measured balance the parts alone tell it, whatever the scale says
        double target = Length.Meters * (share + 0.5), rest = total - point.MassSi;
        double restMoment = total * BalancePoint.Meters - point.MassSi * point.CentreSi;
        double mass = (restMoment - rest * target) / (target - point.CentreSi);
        double least = 100 * (restMoment / rest / Length.Meters - 0.5), most = 100 * (point.CentreSi / Length.Meters - 0.5);
        return target < point.CentreSi && mass >= 0
            ? Mass.FromKilograms(mass)
            : throw new ArgumentOutOfRangeException(nameof(wanted), wanted, FormattableString.Invariant(
                $"wanted must be from {least:0.0} %, which a point without mass gives, to below {most:0.0} %, where the point itself lies; it was {wanted.Percent:0.0} %. Move or change another part."));
    }

    /// <summary>Finds the mass of the point that gives a wanted mass of the arrow.</summary>
    /// <param name="wanted">Of the complete arrow.</param>
    /// <returns>Mass of the point; zero or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The other parts weigh more than that.</exception>
    public Mass PointForMass(Mass wanted)
    {
        double rest = Mass.Kilograms - Point.MassSi;
        return wanted.Kilograms >= rest
            ? Mass.FromKilograms(wanted.Kilograms - rest)
            : throw new ArgumentOutOfRangeException(nameof(wanted), wanted, FormattableString.Invariant(
                $"wanted must be at least {rest * GrainsPerKilogram:0.0} gr, what the arrow weighs without point; it was {wanted.Grains:0.0} gr."));
    }

    /// <summary>Front of centre with its interval, from how well scale and tape measure were read.</summary>
    /// <param name="massError">Standard deviation of the mass of each part; zero or more. Not used where the balance was measured.</param>
    /// <param name="lengthError">Standard deviation of each place, of the balance point and of the standard length; zero or more.</param>
    /// <param name="level">Of the interval, between 0 and 1.</param>
    /// <returns>The estimate; errors of all readings independent and normal. Weighed but not balanced, the mass that the parts lack may sit anywhere along the arrow, and widens it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public Estimate<Ratio> FrontOfCentreWithin(Mass massError, Length lengthError, double level)
    {
        double sm = Require.NotNegative(massError.Kilograms, "kg", nameof(massError));
        double sx = Require.NotNegative(lengthError.Meters, "m", nameof(lengthError));
        double length = Length.Meters, balance = BalancePoint.Meters, mass = Mass.Kilograms;
        double placed = MeasuredBalance is not null ? sx * sx : Parts.Sum(p => Square(sm * (p.CentreSi - balance) / mass) + Square(sx * p.MassSi / mass));
        double missing = MeasuredBalance is null && MassDifference is { } lacking ? Math.Abs(lacking.Kilograms) / mass * TotalLength.Meters / 2 / Math.Sqrt(3) : 0; // what the list lacks may sit anywhere
        double error = Math.Sqrt(placed + missing * missing + Square(sx * balance / length)) / length, half = Normal.InvCDF(0, 1, (1 + Require.Level(level)) / 2) * error;
        double value = FrontOfCentre.DecimalFractions;
        return new(
            Ratio.FromDecimalFractions(value), Ratio.FromDecimalFractions(error), Ratio.FromDecimalFractions(value - half), Ratio.FromDecimalFractions(value + half),
            level, 1, MeasuredBalance is null ? "added up from the parts; errors of scale and tape measure" : "balanced on a knife edge; errors of the tape measure");
    }

    /// <summary>The arrow as its flight needs it.</summary>
    /// <param name="shaftDiameter">Outer diameter of the shaft; positive.</param>
    /// <returns>Mass, length and diameter; drag is left open, for it is not a matter of mass and balance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not positive.</exception>
    public Arrow ToArrow(Length shaftDiameter)
    {
        Require.Positive(shaftDiameter.Meters, "m", nameof(shaftDiameter));
        return new() { Mass = Mass, Length = Length, ShaftDiameter = shaftDiameter };
    }

    /// <summary>What turns this arrow into the wind: its balance point joined with its lifting parts.</summary>
    /// <param name="shaftDiameter">Outer diameter of the shaft; positive.</param>
    /// <param name="point">The point as a lifting part.</param>
    /// <param name="fletching">The vanes, counted from the tip of the point (<see cref="FromTip"/>); <see langword="null"/> for a bare shaft.</param>
    /// <param name="carryOver">How the shaft adds to the lift of the vanes.</param>
    /// <param name="crossflowConstant">Of the shaft across the flow; see <see cref="Stability.CrossflowConstant"/>.</param>
    /// <returns>The stability, lengths from the foremost place that the parts reach, taken as the tip.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public Stability StabilityWith(Length shaftDiameter, LiftingPart point, Fletching? fletching, CarryOver carryOver, double crossflowConstant) => new()
    {
        ShaftDiameter = shaftDiameter,
        TotalLength = TotalLength,
        BalancePoint = FromTip(BalancePoint),
        Point = point,
        Fletching = fletching,
        CarryOver = carryOver,
        CrossflowConstant = crossflowConstant,
    };

    /// <summary>A place counted from the tip of the point instead of from the bottom of the nock slot.</summary>
    /// <param name="fromSlot">From the bottom of the nock slot.</param>
    /// <returns>From the foremost place that the parts reach; give the point its length for that to be its tip.</returns>
    public Length FromTip(Length fromSlot) => Front - fromSlot;

    const double GrainsPerKilogram = 1e6 / 64.79891; // the grain is 64.79891 mg exactly

    static double Square(double value) => value * value;
}
