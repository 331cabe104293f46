namespace Ascham.Groups;

using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.RootFinding;

/// <summary>Sums of squares whose expected mean square is a sum of known shapes, none with a negative amount.</summary>
sealed class VarianceParts
{
    readonly double[][] shapes;
    readonly double[] squares, freedom;
    readonly int parts;
    readonly double scale, floor;

    internal VarianceParts(double[][] shapes, double[] squares, double[] freedom)
    {
        (this.shapes, this.squares, this.freedom, parts) = (shapes, squares, freedom, shapes[0].Length);
        scale = squares.Sum() / freedom.Sum();
        floor = 1e-12 * scale;
        if (!(scale > 0))
        {
            throw new CannotTellException("Scatter cannot be told: in every group all impacts are recorded at one place of this axis. Record them finer.");
        }
    }

    /// <summary>The likeliest amounts; one part may be held at an amount.</summary>
    /// <remarks>Fisher's scoring, each step a weighted least squares over amounts that are not negative (all subsets tried, for there are at most three), halved until it gains.</remarks>
    internal double[] Best(int? held, double at)
    {
        int[] free = [.. Enumerable.Range(0, parts).Where(k => k != held)];
        double[] amounts = new double[parts];
        foreach (int k in free)
        {
            amounts[k] = scale / shapes.Max(s => s[k]);
        }

        if (held is { } fixedPart)
        {
            amounts[fixedPart] = at;
        }

        double now = Likelihood(amounts);
        for (int i = 0; i < 200 && free.Length > 0; i++)
        {
            double[] wanted = Step(amounts, free, held, at), tried = amounts;
            double share = 1, then = double.NegativeInfinity;
            for (; share > 1e-6; share /= 2)
            {
                double part = share;
                tried = [.. amounts.Zip(wanted, (a, w) => a + (part * (w - a)))];
                if ((then = Likelihood(tried)) >= now)
                {
                    break;
                }
            }

            if (!(then > now + 1e-11))
            {
                return then >= now ? tried : amounts;
            }

            (amounts, now) = (tried, then);
        }

        return amounts;
    }

    /// <summary>Interval of the root of an amount.</summary>
    internal (double Low, double High) Interval(int part, double[] best, double level)
    {
        double most = Likelihood(best), shortBy = ChiSquared.InvCDF(1, level) / 2, root = Math.Sqrt(best[part]);
        double Excess(double r) => most - Likelihood(Best(part, r * r)) - shortBy;
        double high = Math.Max(root, 0.1 * Math.Sqrt(scale)) * 1.5;
        while (Excess(high) < 0)
        {
            high *= 2;
        }

        return (best[part] == 0 || Excess(0) <= 0 ? 0 : Brent.FindRoot(Excess, 0, root, 1e-7 * high, 200), Brent.FindRoot(Excess, root, high, 1e-7 * high, 200));
    }

    /// <summary>How often a part would seem so large if there were none of it: half a chi-square, since it cannot seem negative.</summary>
    internal double ChanceOfNone(int part, double[] best)
    {
        double twice = 2 * (Likelihood(best) - Likelihood(Best(part, 0)));
        return twice <= 0 ? 1 : (1 - ChiSquared.CDF(1, twice)) / 2;
    }

    /// <summary>Degrees of freedom of a sum of the parts: twice its square over its variance, from the expected information.</summary>
    internal double Freedom(double[] sum, double[] amounts)
    {
        double[] variance = [.. squares.Select((_, i) => Variance(amounts, i))];
        var information = Matrix<double>.Build.Dense(parts, parts, (a, b) => freedom.Select((f, i) => f / 2 * shapes[i][a] * shapes[i][b] / (variance[i] * variance[i])).Sum());
        var weights = Vector<double>.Build.Dense(sum);
        double value = amounts.Zip(sum, (a, s) => a * s).Sum();
        return 2 * value * value / (weights * information.Solve(weights));
    }

    internal double Likelihood(double[] amounts)
    {
        double sum = 0;
        for (int i = 0; i < squares.Length; i++)
        {
            double variance = Variance(amounts, i);
            sum -= ((freedom[i] * Math.Log(variance)) + (squares[i] / variance)) / 2;
        }

        return sum;
    }

    double Variance(double[] amounts, int i) => Math.Max(floor, amounts.Zip(shapes[i], (a, s) => a * s).Sum());

    double[] Step(double[] amounts, int[] free, int? held, double at)
    {
        double[] weight = [.. squares.Select((_, i) => freedom[i] / Math.Pow(Variance(amounts, i), 2))];
        double[] target = [.. squares.Select((s, i) => (s / freedom[i]) - (held is { } h ? at * shapes[i][h] : 0))];
        double[] chosen = [];
        double least = double.PositiveInfinity;
        for (int mask = 0; mask < 1 << free.Length; mask++)
        {
            int[] used = [.. free.Where((_, j) => (mask >> j & 1) == 1)];
            double[] tried = new double[parts];
            if (held is { } h)
            {
                tried[h] = at;
            }

            if (used.Length > 0)
            {
                var normal = Matrix<double>.Build.Dense(used.Length, used.Length, (a, b) => weight.Select((w, i) => w * shapes[i][used[a]] * shapes[i][used[b]]).Sum());
                var right = Vector<double>.Build.Dense(used.Length, a => weight.Select((w, i) => w * shapes[i][used[a]] * target[i]).Sum());
                Vector<double> found = normal.Solve(right);
                if (found.Any(f => !(f >= 0)))
                {
                    continue;
                }

                for (int a = 0; a < used.Length; a++)
                {
                    tried[used[a]] = found[a];
                }
            }

            double off = weight.Select((w, i) => w * Math.Pow(target[i] - used.Sum(k => tried[k] * shapes[i][k]), 2)).Sum();
            (chosen, least) = off < least ? (tried, off) : (chosen, least);
        }

        return chosen;
    }
}
