namespace Ascham.Tests.SightsTests;

using Ascham.Quantities;
using Ascham.Sights;
using Xunit;

public class TapeFitTests
{
    static readonly SightModel Bow = SightModelTests.Sight(0.0015);

    [Fact]
    public void Perfect_marks_give_back_the_bow()
    {
        var fit = TapeFit.To(Marks([20, 40, 60, 80, 100], _ => 0), Bow.WithSpeed(70).WithDragConstant(0.001), fitDrag: true, 0.9);
        Assert.Equal(84, fit.EffectiveSpeed.Value.MetersPerSecond, 1e-5);
        Assert.Equal(0.0015, fit.DragConstant!.Value.InverseMeters, 1e-8);
        Assert.Equal(5, fit.Offset.Value.Millimeters, 1e-6);
        Assert.Equal(0, fit.ChiSquare, 1e-8);
    }

    // Derived, not published: two marks fitted without drag when the true k is 0.0015 1/m, by the small-angle formula for v²;
    // that form itself is 0.12 % low, and the drop's small-angle error reaches 0.3 %, hence the tolerance.
    [Theory]
    [InlineData(20, 40, 81.66)]
    [InlineData(20, 60, 80.86)]
    [InlineData(30, 60, 80.47)]
    [InlineData(40, 80, 79.26)]
    public void A_fit_without_drag_hides_the_drag_in_the_speed(double near, double far, double effective)
    {
        var fit = TapeFit.To(Marks([near, far], _ => 0), Bow.WithDragConstant(0), fitDrag: false, 0.9);
        Assert.Equal(effective, fit.EffectiveSpeed.Value.MetersPerSecond, 0.003 * effective);
    }

    [Fact] // closed form, small angles: v² is inversely as travel / (peep to pin) + h0 (1/R1 − 1/R2)
    public void Half_a_millimetre_between_twenty_and_sixty_yards_moves_the_speed_as_the_small_angle_formula_says()
    {
        double travel = Bow.ScaleTravel(60.Yards) - Bow.ScaleTravel(20.Yards), parallax = 0.11 * (1 / 18.288 - 1 / 54.864);
        double expected = Math.Sqrt((travel / 0.8 + parallax) / ((travel + 0.5e-3) / 0.8 + parallax)) - 1; // −1.12 %

        var fit = TapeFit.To(Marks([20, 60], y => y == 60 ? 0.5 : 0), Bow, fitDrag: false, 0.9);

        Assert.Equal(expected, fit.EffectiveSpeed.Value.MetersPerSecond / 84 - 1, 0.0001);
    }

    [Fact]
    public void Speed_and_drag_fitted_together_are_strongly_correlated()
    {
        var fit = TapeFit.To(Marks([20, 40, 60, 80], _ => 0), Bow, fitDrag: true, 0.9);
        Assert.InRange(fit.SpeedDragCorrelation!.Value, 0.95, 0.9999);
        Assert.True(fit.EffectiveSpeed.StandardError > 3 * TapeFit.To(Marks([20, 40, 60, 80], _ => 0), Bow, fitDrag: false, 0.9).EffectiveSpeed.StandardError);
    }

    [Fact] // coverage, fixed seed: 90 % intervals of the effective speed and of a mark not measured, within 4 standard errors of a frequency
    public void Intervals_cover_nine_times_in_ten()
    {
        const int Tapes = 600;
        var random = new Random(20260902);
        double speed = 0, mark = 0, exact = 5 + Bow.ScaleTravel(70.Yards) * 1e3;
        for (int i = 0; i < Tapes; i++)
        {
            var fit = TapeFit.To(Marks([20, 40, 60, 80, 100], _ => 0.3 * Normal(random)), Bow, fitDrag: true, 0.9);
            var seventy = fit.PositionAt(70.Yards);
            speed += fit.EffectiveSpeed.Low.MetersPerSecond <= 84 && 84 <= fit.EffectiveSpeed.High.MetersPerSecond ? 1 : 0;
            mark += seventy.Low.Millimeters <= exact && exact <= seventy.High.Millimeters ? 1 : 0;
        }

        double allowed = 4 * Math.Sqrt(0.9 * 0.1 / Tapes);
        Assert.InRange(speed / Tapes, 0.9 - allowed, 0.9 + allowed);
        Assert.InRange(mark / Tapes, 0.9 - allowed, 0.9 + allowed);
    }

    [Fact]
    public void Too_few_marks_are_refused_with_the_count()
    {
        var exception = Assert.Throws<ArgumentException>(() => TapeFit.To(Marks([20, 40], _ => 0), Bow, fitDrag: true, 0.9));
        Assert.Contains("needs 3 marks or more, each with a positive standard deviation; 2 given", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Marks_that_are_no_tape_are_refused() => Assert.ThrowsAny<Exception>(() =>
        TapeFit.To([new(20.Yards, 50.Millimetres, 0.1.Millimetres), new(60.Yards, 10.Millimetres, 0.1.Millimetres)], Bow, fitDrag: false, 0.9));

    static Mark[] Marks(double[] yards, Func<double, double> errorMm) =>
        [.. yards.Select(y => new Mark(y.Yards, (5 + Bow.ScaleTravel(y.Yards) * 1e3 + errorMm(y)).Millimetres, 0.3.Millimetres))];

    static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
