namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using Ascham.Tests.Checks;
using Xunit;

public class RungeKutta8Tests
{
    // y' = x + 2xy, which depends on x so that wrong nodes show: y = (y0 + 1/2) exp(x²) - 1/2.
    const double Start = 0.3, End = 1.5, Initial = 1.0;

    [Fact]
    public void Order_is_eight_on_a_field_that_depends_on_x()
    {
        double exact = (Initial + 0.5) * Math.Exp(End * End - Start * Start) - 0.5;
        Assert.All(Order.Observed(n => Math.Abs(Solve(n, new Real(Initial)).End.Value - exact), 4, 2), o => Assert.InRange(o, 7.4, 8.6));
    }

    [Fact]
    public void Order_is_eight_for_the_derivative_by_the_initial_value()
    {
        double exact = Math.Exp(End * End - Start * Start);
        Assert.All(Order.Observed(n => Math.Abs(Solve(n, new Dual(Initial, 1)).End.Slope - exact), 4, 2), o => Assert.InRange(o, 7.4, 8.6));
    }

    [Fact]
    public void Order_is_eight_for_an_integral_over_the_nodes()
    {
        // The integral of x + 2xy along the path is y itself.
        double exact = (Initial + 0.5) * Math.Exp(End * End - Start * Start) - 0.5 - Initial;
        Assert.All(Order.Observed(n => Math.Abs(Solve(n, new Real(Initial)).Integral.Value - exact), 4, 2), o => Assert.InRange(o, 7.4, 8.6));
    }

    [Fact]
    public void Published_lobatto_points_integrate_degree_seven_exactly()
    {
        // Abramowitz & Stegun table 25.6, n = 5: inner abscissae ±0.65465 36707 07977 on (-1, 1).
        const double Inner = 0.654653670707977;
        for (int degree = 0; degree <= 7; degree++)
        {
            double f(double t) => Math.Pow(0.5 * (1 + t), degree);
            Real mean = Lobatto.MeanOf<Real>(new(f(-1)), new(f(-Inner)), new(f(0)), new(f(Inner)), new(f(1)));
            Assert.Equal(1.0 / (degree + 1), mean.Value, 1e-14);
        }
    }

    static (T End, T Integral) Solve<T>(int steps, T initial)
        where T : struct, IReal<T>
    {
        double h = (End - Start) / steps;
        var y = new One<T>(initial);
        var integral = T.Of(0);
        for (int i = 0; i < steps; i++)
        {
            double x = Start + i * h;
            y = RungeKutta8.Step<Growing<T>, One<T>, T>(new(), T.Of(x), y, T.Of(h), out var at);
            double inner = 0.5 * h * (1 - Math.Sqrt(3.0 / 7));
            integral += h * Lobatto.MeanOf(
                Slope(x, at.Start), Slope(x + inner, at.Early), Slope(x + 0.5 * h, at.Middle), Slope(x + h - inner, at.Late), Slope(x + h, at.End));
        }

        return (y.Value, integral);
    }

    static T Slope<T>(double x, One<T> y)
        where T : struct, IReal<T>
        => new Growing<T>().At(T.Of(x), y).Value;

    readonly struct One<T>(T value) : IState<One<T>, T>
        where T : struct, IReal<T>
    {
        public readonly T Value = value;

        public static One<T> operator +(One<T> a, One<T> b) => new(a.Value + b.Value);

        public static One<T> operator *(double a, One<T> b) => new(a * b.Value);

        public static One<T> operator *(T a, One<T> b) => new(a * b.Value);
    }

    readonly struct Growing<T> : IField<One<T>, T>
        where T : struct, IReal<T>
    {
        public One<T> At(T x, One<T> y) => new(x + 2.0 * x * y.Value);
    }
}
