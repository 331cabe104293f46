namespace Ascham.Tests.Checks;

/// <summary>Measures the order of convergence of a fixed-step method.</summary>
static class Order
{
    /// <summary>Observed order: log2 of the ratio of successive errors as the step halves.</summary>
    public static double[] Observed(Func<int, double> errorAtStepCount, int start, int halvings)
    {
        double[] error = [.. Enumerable.Range(0, halvings + 1).Select(k => errorAtStepCount(start << k))];
        return [.. Enumerable.Range(0, halvings).Select(k => Math.Log2(error[k] / error[k + 1]))];
    }
}
