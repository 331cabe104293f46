namespace Ascham.Causes;

using static System.Math;

/// <summary>Scatter is not known exactly: a grid of what it may have been and may be now, for sums over it.</summary>
sealed class ScatterNodes
{
    const int Side = 5;
    const double Usual = 1.2, UsualSd = 0.6; // mrad, and of its logarithm: a weak belief. common practice, no source
    const double Apart = 0.3; // how far the two grids may lie apart where one is not observed

    readonly double[] then = new double[Side], now = new double[Side];
    readonly WithinScatter observedThen, observedNow;

    internal ScatterNodes(Evidence evidence)
    {
        (observedThen, observedNow) = (evidence.ScatterThen, evidence.ScatterNow);
        Stretch = StretchOf(observedThen, observedNow);
        var (a, aWeight) = Seen(observedThen);
        var (b, bWeight) = Seen(observedNow);

        // Two logarithms, each seen or not, tied to one another and, weakly, to the usual.
        double tie = 1 / (Apart * Apart), usual = 1 / (UsualSd * UsualSd), u = Log(Usual);
        double aa = aWeight + tie + usual, bb = bWeight + tie, determinant = aa * bb - tie * tie;
        double ra = aWeight * a + usual * u, rb = bWeight * b;
        Fill(then, (bb * ra + tie * rb) / determinant, Sqrt(bb / determinant));
        Fill(now, (tie * ra + aa * rb) / determinant, Sqrt(aa / determinant));
    }

    /// <summary>Variance across over variance of heights.</summary>
    internal double Stretch { get; }

    internal const int Count = Side * Side, Middle = Count / 2;

    /// <summary>Variances of heights, mrad², then and now.</summary>
    internal (double Then, double Now) At(int node) => (Exp(2 * then[node / Side]), Exp(2 * now[node % Side]));

    /// <summary>Logarithm of the weight of a node, but for a constant, under a hypothesis.</summary>
    internal double LogWeight(int node, Hypothesis hypothesis)
    {
        double a = then[node / Side], b = now[node % Side];
        double grown = (b - a - hypothesis.Growth) / hypothesis.GrowthSd, off = (a - Log(Usual)) / UsualSd;
        return LogLikelihood(observedThen, a) + LogLikelihood(observedNow, b) - grown * grown / 2 - Log(hypothesis.GrowthSd) - off * off / 2;
    }

    double LogLikelihood(WithinScatter seen, double log)
    {
        double sum = seen.DegreesOfFreedom * (seen.Up * seen.Up + seen.Right * seen.Right / Stretch);
        return seen.DegreesOfFreedom > 0 ? -2 * seen.DegreesOfFreedom * log - sum / 2 * Exp(-2 * log) : 0;
    }

    (double Log, double Weight) Seen(WithinScatter seen) => seen.DegreesOfFreedom > 0
        ? (Log((seen.Up * seen.Up + seen.Right * seen.Right / Stretch) / 2) / 2, 4 * seen.DegreesOfFreedom)
        : (0, 0);

    // Pooled, and drawn toward round by a belief worth three arrows.
    static double StretchOf(WithinScatter then, WithinScatter now)
    {
        double dof = then.DegreesOfFreedom + now.DegreesOfFreedom;
        double up = then.DegreesOfFreedom * then.Up * then.Up + now.DegreesOfFreedom * now.Up * now.Up;
        double right = then.DegreesOfFreedom * then.Right * then.Right + now.DegreesOfFreedom * now.Right * now.Right;
        double belief = dof > 0 ? 3 * (up + right) / (2 * dof) : 1;
        return (right + belief) / (up + belief);
    }

    static void Fill(double[] grid, double middle, double sd)
    {
        for (int i = 0; i < Side; i++)
        {
            grid[i] = middle + (i - Side / 2) * 1.1 * sd;
        }
    }
}
