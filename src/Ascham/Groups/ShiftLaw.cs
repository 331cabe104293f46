namespace Ascham.Groups;

using Ascham.Numerics;
using MathNet.Numerics.RootFinding;

/// <summary>The law of a difference of centres under one model of the spread.</summary>
/// <param name="Variance">Estimated covariance of the difference, m².</param>
/// <param name="Tail">Probability, without any shift, that U = dᵀV⁻¹d exceeds a value.</param>
/// <param name="Critical">The U exceeded with a probability.</param>
/// <param name="Degrees">Degrees of freedom of the variance along a unit vector (right, up).</param>
/// <param name="Round">Whether the region is a disc, so that the bivariate t law applies.</param>
/// <param name="Method">In a few words.</param>
sealed record ShiftLaw(
    Symmetric Variance, Func<double, double> Tail, Func<double, double> Critical, Func<double, double, double> Degrees, bool Round, string Method)
{
    /// <summary>The law for two groups; the models are those of docs/models/groups.md.</summary>
    internal static ShiftLaw Of(SpreadModel model, Moments first, Moments second)
    {
        Symmetric a = Symmetric.ScatterOf(first), b = Symmetric.ScatterOf(second);
        int n1 = first.Count, n2 = second.Count;
        Symmetric own1 = a * (1.0 / (n1 - 1) / n1), own2 = b * (1.0 / (n2 - 1) / n2);
        return model switch
        {
            SpreadModel.Round => OneSpread(a + b, n1 + n2 - 2, (1.0 / n1) + (1.0 / n2)),
            SpreadModel.RoundUnlike => TwoSpreads(own1.Trace / 2, 2 * (n1 - 1), own2.Trace / 2, 2 * (n2 - 1)),
            SpreadModel.AnyShape => OneShape(a + b, n1 + n2 - 2, (1.0 / n1) + (1.0 / n2)),
            SpreadModel.AnyShapeUnlike => TwoShapes(own1, n1 - 1, own2, n2 - 1),
            _ => James(own1, n1 - 1, own2, n2 - 1),
        };
    }

    /// <summary>A round spread: F with 2 and twice the degrees of freedom of an axis.</summary>
    internal static ShiftLaw OneSpread(Symmetric scatter, double degrees, double share) =>
        Disc(scatter.Trace / (2 * degrees) * share, 2 * degrees, "both axes pooled, round groups of one spread");

    /// <summary>One shape: Hotelling.</summary>
    internal static ShiftLaw OneShape(Symmetric scatter, double degrees, double share) =>
        Ellipse(scatter * (share / degrees), degrees, (_, _) => degrees, "Hotelling, groups of one shape");

    static ShiftLaw TwoSpreads(double own1, double degrees1, double own2, double degrees2)
    {
        double sum = own1 + own2, degrees = sum * sum / ((own1 * own1 / degrees1) + (own2 * own2 / degrees2));
        return Disc(sum, degrees, "both axes pooled within each round group, Welch's degrees of freedom");
    }

    static ShiftLaw TwoShapes(Symmetric own1, int degrees1, Symmetric own2, int degrees2)
    {
        Symmetric sum = own1 + own2, inverse = sum.Inverse;
        double Share(Symmetric own, int degrees)
        {
            var (product, square) = own.TracesWith(inverse);
            return (square + (product * product)) / degrees;
        }

        // p + p² = 6 with two coordinates.
        double degrees = 6 / (Share(own1, degrees1) + Share(own2, degrees2));
        return Ellipse(sum, degrees, Welch(own1, degrees1, own2, degrees2), "modified Nel and van der Merwe, each group its own shape");
    }

    static ShiftLaw James(Symmetric own1, int degrees1, Symmetric own2, int degrees2)
    {
        Symmetric sum = own1 + own2, inverse = sum.Inverse;
        var (product1, square1) = own1.TracesWith(inverse);
        var (product2, square2) = own2.TracesWith(inverse);
        double products = (product1 * product1 / degrees1) + (product2 * product2 / degrees2);
        double squares = (square1 / degrees1) + (square2 / degrees2);
        double a = 1 + (products / 4), b = (squares + (products / 2)) / 8;
        // Chi-square with two degrees of freedom has the tail exp(−x/2), and U = x(a + bx).
        double Tail(double u) => Math.Exp(-((Math.Sqrt((a * a) + (4 * b * u)) - a) / (2 * b)) / 2);
        double Critical(double tail) => -2 * Math.Log(tail) * (a - (2 * b * Math.Log(tail)));
        return new(sum, Tail, Critical, Welch(own1, degrees1, own2, degrees2), false, "James's first order, each group its own shape");
    }

    static Func<double, double, double> Welch(Symmetric own1, int degrees1, Symmetric own2, int degrees2) => (right, up) =>
    {
        double v1 = own1.Of(right, up), v2 = own2.Of(right, up);
        return (v1 + v2) * (v1 + v2) / ((v1 * v1 / degrees1) + (v2 * v2 / degrees2));
    };

    static ShiftLaw Disc(double variance, double degrees, string method) => new(
        Symmetric.Identity * variance, u => Math.Pow(1 + (u / degrees), -degrees / 2), tail => 2 * Quantiles.FisherTwo(degrees, 1 - tail), (_, _) => degrees, true, method);

    static ShiftLaw Ellipse(Symmetric variance, double degrees, Func<double, double, double> along, string method) => new(
        variance,
        u => Math.Pow(1 + (u / degrees), -(degrees - 1) / 2),
        tail => 2 * degrees / (degrees - 1) * Quantiles.FisherTwo(degrees - 1, 1 - tail),
        along, false, method);

    /// <summary>U of a difference.</summary>
    internal double Statistic(double right, double up) => Variance.Inverse.Of(right, up);

    /// <summary>Half the Student t interval along a unit vector, each end missed with a probability.</summary>
    internal double Reach(double right, double up, double tail) =>
        Quantiles.StudentT(Degrees(right, up), 1 - (2 * tail)) * Math.Sqrt(Variance.Of(right, up));

    /// <summary>Upper bound of the distance: the longest of the one-sided Student bounds in all directions.</summary>
    /// <remarks>Intersection-union: whatever the direction of the true shift, the bound along it fails with the probability given, so the longest fails no more often.</remarks>
    internal double Upper(double right, double up, double tail)
    {
        if (Round)
        {
            return double.Hypot(right, up) + Reach(1, 0, tail);
        }

        double Bound(double angle)
        {
            var (sine, cosine) = Math.SinCos(angle);
            return (cosine * right) + (sine * up) + Reach(cosine, sine, tail);
        }

        const int steps = 36;
        double step = 2 * Math.PI / steps, best = Enumerable.Range(0, steps).Select(k => k * step).MaxBy(Bound);
        // The bound is smooth in the angle: three parabolas through the best points leave nothing of note.
        for (int k = 0; k < 3; k++)
        {
            double low = Bound(best - step), middle = Bound(best), high = Bound(best + step), bend = low - (2 * middle) + high;
            best += bend < 0 ? Math.Clamp(step * (low - high) / (2 * bend), -step, step) : 0;
            step /= 8;
        }

        return Bound(best);
    }

    /// <summary>Lower bound of the distance; zero exactly when the test of no shift does not reject at that probability.</summary>
    internal double Lower(double right, double up, double tail)
    {
        if (Tail(Statistic(right, up)) >= tail)
        {
            return 0;
        }

        double distance = double.Hypot(right, up);
        if (Round && distance > 500 * Math.Sqrt(Variance.Right))
        {
            return distance - Reach(1, 0, tail); // the circle is straight by now: Student's t to six digits
        }

        return Round
            ? Brent.FindRoot(d => Beyond(d, distance) - tail, 0, distance, 1e-10 * distance, 200)
            : Nearest(right, up, Critical(tail));
    }

    // Chance that a difference as far out as the one seen, or farther, comes of a true shift of a given size: the bivariate t law outside a circle,
    // with the scale known. Zero shift gives the test itself, a far shift Student's t. The boundary is smooth on the scale of its radius, so the
    // mean over equal steps of the angle converges fast; far out the steps must grow with it.
    double Beyond(double shift, double distance)
    {
        double scale = Math.Sqrt(Variance.Right), r = distance / scale, d = shift / scale;
        int steps = (int)(64 + (16 * r));
        double sum = 0;
        for (int k = 0; k < steps; k++)
        {
            var (sine, cosine) = Math.SinCos(2 * Math.PI * (k + 0.5) / steps);
            double edge = (d * cosine) + Math.Sqrt(Math.Max(0, (r * r) - (d * d * sine * sine)));
            sum += Tail(edge * edge);
        }

        return sum / steps;
    }

    // The point of the ellipse (δ − d)ᵀV⁻¹(δ − d) = K nearest to no shift. With eigenvalues v and d along them, δ = μd/(v + μ), and Σ d²v/(v + μ)² = K.
    double Nearest(double right, double up, double critical)
    {
        var (sine, cosine) = Math.SinCos(Variance.Direction);
        double d1 = (cosine * right) + (sine * up), d2 = (cosine * up) - (sine * right), v1 = Variance.Larger, v2 = Variance.Smaller;
        double Excess(double logMu)
        {
            double mu = Math.Exp(logMu), q1 = v1 + mu, q2 = v2 + mu;
            return (d1 * d1 * v1 / q1 / q1) + (d2 * d2 * v2 / q2 / q2) - critical;
        }

        double start = Math.Log(v2), m = Math.Exp(Brent.FindRootExpand(Excess, start - 1, start + 1, 1e-12, 200, 1.6, 60));
        return double.Hypot(m * d1 / (v1 + m), m * d2 / (v2 + m));
    }
}
