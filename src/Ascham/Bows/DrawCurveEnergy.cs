namespace Ascham.Bows;

using Ascham.Quantities;
using UnitsNet;

public sealed partial class DrawCurve
{
    /// <summary>Energy stored from rest to full draw: the area under the curve. See <see cref="StoredEnergyWithin"/> for how sure it is.</summary>
    public Energy StoredEnergy => Energy.FromJoules(Area(draw[0], draw[^1]));

    /// <summary>Stored energy over peak weight. A length by its dimension: in feet it is the trade's foot-pounds per pound of peak.</summary>
    public Length EnergyPerPeakWeight => Length.FromMeters(StoredEnergy.Joules / PeakWeight.Newtons);

    /// <summary>Energy stored from rest to a draw length.</summary>
    /// <param name="drawLength">By the trade standard; on the curve.</param>
    /// <returns>The area under the curve to there.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The draw length is not on the curve.</exception>
    public Energy StoredEnergyTo(Length drawLength) =>
        Energy.FromJoules(Area(draw[0], Require.InRange(drawLength.Meters, draw[0], draw[^1], "m", nameof(drawLength))));

    /// <summary>Stored energy with its interval.</summary>
    /// <remarks>
    /// Three independent errors: of the readings, through the weights of the trapezoid rule; of the scale as a whole; of what lies between the points,
    /// taken as the difference between smooth curve and straight lines over √3 (spread evenly). A sketch carries the spread of its kind of bow instead.
    /// </remarks>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <param name="scaleSd">Relative standard deviation of the scale, common to all points: zero only for one checked with a known weight.</param>
    /// <returns>The energy.</returns>
    /// <exception cref="InvalidOperationException">A measured point above zero force carries no <see cref="DrawPoint.ForceSd"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level or the scale's error is outside its range.</exception>
    public Estimate<Energy> StoredEnergyWithin(double level, Ratio scaleSd)
    {
        double scale = Require.InRange(scaleSd.DecimalFractions, 0, 0.5, "", nameof(scaleSd)), energy = StoredEnergy.Joules;
        double error = Math.Sqrt(Square(ShapeError()) + Square(scale * energy));
        string how = IsSketch ? "area under a sketched shape, spread of its kind of bow" : "area under the draw curve: readings, scale and gaps between points";
        return Bounds.Normal(energy, error, level, points.Length, how).Map(j => Energy.FromJoules(j));
    }

    /// <summary>Static hysteresis: the share of the stored energy that does not come back when the string is let down slowly.</summary>
    /// <remarks>1 − (area under the let-down)/(area under the draw), ASTM F1832. The scale's own error cancels when one scale read both.</remarks>
    /// <param name="letDown">Read while letting down, from the same full draw to the same rest, each within 0.25 in.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The share, zero or more, with the errors of readings and gaps of both curves and of ends that do not meet.</returns>
    /// <exception cref="ArgumentException">The curves do not end at the same draw lengths, or the let-down gives back more than was stored, beyond the interval.</exception>
    /// <exception cref="InvalidOperationException">A point of either curve above zero force carries no <see cref="DrawPoint.ForceSd"/>.</exception>
    public Estimate<Ratio> Hysteresis(DrawCurve letDown, double level)
    {
        ArgumentNullException.ThrowIfNull(letDown);
        const double Same = 0.25 * 0.0254;
        if (Math.Abs(letDown.draw[0] - draw[0]) > Same || Math.Abs(letDown.draw[^1] - draw[^1]) > Same)
        {
            throw new ArgumentException(
                Text($"The let-down goes from {letDown.FullDraw.Inches:0.##} to {letDown.AtRest.Inches:0.##} in, the draw from {AtRest.Inches:0.##} to {FullDraw.Inches:0.##} in; both must end within 0.25 in of each other. Measure the missing end."),
                nameof(letDown));
        }

        // What lies in the gap between the two ends was read in one direction only: spread evenly up to the force there.
        double ends = Math.Sqrt(Square((letDown.draw[0] - draw[0]) * force[0]) + Square((letDown.draw[^1] - draw[^1]) * force[^1])) / Math.Sqrt(3);
        double up = StoredEnergy.Joules, down = letDown.StoredEnergy.Joules, back = down / up;
        double error = back * Math.Sqrt(Square(ShapeError() / up) + (Square(letDown.ShapeError()) + Square(ends)) / Square(down));
        Estimate<double> lost = Bounds.Normal(1 - back, error, level, points.Length + letDown.points.Length, "areas under draw and let-down");
        if (lost.High < 0)
        {
            throw new ArgumentException(
                Text($"The let-down gives back {down / Foot:0.0} ft lbf of {up / Foot:0.0} ft lbf stored, more than the errors of the readings allow; no bow does. Check which curve is which, and measure both again in one go: draw only forwards, then let down only backwards."),
                nameof(letDown));
        }

        return (lost with { Value = Math.Max(0, lost.Value), Low = Math.Max(0, lost.Low) }).Map(x => Ratio.FromDecimalFractions(x));
    }

    const double Foot = 1.3558179483314004; // J per ft lbf, exact: 0.3048 m times 4.4482216152605 N

    // Standard error of the energy by readings and gaps, J.
    double ShapeError()
    {
        double energy = StoredEnergy.Joules;
        if (IsSketch)
        {
            return sketchError * energy;
        }

        double readings = 0, straight = 0;
        for (int i = 0; i < points.Length; i++)
        {
            double weight = (draw[Math.Min(i + 1, draw.Length - 1)] - draw[Math.Max(i - 1, 0)]) / 2;
            straight += weight * force[i];
            readings += Square(weight * Sd(points[i]));
        }

        return Math.Sqrt(readings + Square(energy - straight) / 3);
    }

    static double Sd(DrawPoint point) => point.ForceSd?.Newtons ?? (point.Force.Newtons == 0
        ? 0 // rest is where the force ends, by definition
        : throw new InvalidOperationException(Text($"How sure the energy is cannot be told: the point at {point.Draw.Inches:0.##} in carries no standard deviation. Read it three times and give ForceSd.")));

    // Two Gauss points are exact for the cubic of each piece.
    double Area(double from, double to)
    {
        double area = 0, node = Math.Sqrt(1 / 12.0);
        for (int i = 1; i < draw.Length; i++)
        {
            double low = Math.Max(from, draw[i - 1]), high = Math.Min(to, draw[i]), width = high - low, middle = (low + high) / 2;
            area += width > 0 ? width / 2 * (At(middle - node * width) + At(middle + node * width)) : 0;
        }

        return area;
    }

    static double Square(double value) => value * value;
}
