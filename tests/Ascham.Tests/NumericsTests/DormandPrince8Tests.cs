namespace Ascham.Tests.NumericsTests;

using System.Runtime.CompilerServices;
using Ascham.Numerics;
using Ascham.Tests.Checks;
using Xunit;

public class DormandPrince8Tests
{
    // y' = x + 2xy, which depends on x so that wrong nodes show: y = (y0 + 1/2) exp(x²) - 1/2.
    const double Start = 0.3, End = 1.5;
    const int Count = 19;

    [Fact]
    public void Order_is_eight_on_a_field_that_depends_on_x() =>
        Assert.All(Order.Observed(n => Math.Abs(Solve(n, 1)[^1] - Exact(Count)), 4, 2), o => Assert.InRange(o, 7.4, 8.6));

    [Fact]
    public void Every_number_of_a_block_is_stepped_alike()
    {
        // Nineteen numbers: sixteen go through at once, three are left over.
        Many y = Solve(8, 1);
        for (int i = 0; i < Count; i++)
        {
            Assert.Equal(Exact(1 + i), y[i], 1e-7 * Exact(1 + i));
        }
    }

    [Fact]
    public void A_field_without_change_leaves_the_state_alone()
    {
        Span<double> room = stackalloc double[DormandPrince8.Stages];
        DormandPrince8.Step(new Still(), 0, 0.1, 3.0, room, out double end);
        Assert.Equal(0.1, end);
    }

    static double Exact(double initial) => (initial + 0.5) * Math.Exp(End * End - Start * Start) - 0.5;

    static Many Solve(int steps, double first)
    {
        double h = (End - Start) / steps;
        Span<Many> room = stackalloc Many[DormandPrince8.Stages];
        Many y = default;
        for (int i = 0; i < Count; i++)
        {
            y[i] = first + i;
        }

        for (int i = 0; i < steps; i++)
        {
            DormandPrince8.Step(new Growing(), Start + i * h, y, h, room, out y);
        }

        return y;
    }

    [InlineArray(Count)]
    struct Many
    {
        double first;
    }

    readonly struct Growing : IRates<Many>
    {
        public void At(double x, in Many y, out Many rates)
        {
            rates = default;
            for (int i = 0; i < Count; i++)
            {
                rates[i] = x + 2 * x * y[i];
            }
        }
    }

    readonly struct Still : IRates<double>
    {
        public void At(double x, in double y, out double rates) => rates = 0;
    }
}
