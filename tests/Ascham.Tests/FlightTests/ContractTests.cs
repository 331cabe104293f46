namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Flight;
using UnitsNet;
using Xunit;

public class ContractTests
{
    static readonly PointMass Flight = new()
    {
        Drag = Drag.FromConstant(ReciprocalLength.FromInverseMeters(0.004)),
        Air = Air.StandardAt(Length.Zero),
        Gravity = Gravity.Standard,
        Wind = Wind.Calm,
    };

    [Fact]
    public void Out_of_reach_tells_how_far_the_arrow_does_reach()
    {
        Launch launch = Up(40, 50);
        Angle line = Angle.FromDegrees(45);
        var e = Assert.Throws<OutOfReachException>(() => Flight.AtSlant(launch, Length.FromMeters(120), line));
        Assert.Equal(120, e.Asked.Meters);
        Assert.Equal(45, e.Inclination.Degrees, 1e-12);
        Assert.Contains("120 m", e.Message);
        Assert.Contains(e.Reach.Meters.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture), e.Message);

        // The reach is true: just inside it the arrow arrives, just outside it does not.
        Assert.True(Flight.TryAtSlant(launch, e.Reach - Length.FromCentimeters(1), line, out FlightState state));
        Assert.InRange(line.Degrees - state.Elevation.Degrees, 85, 88.1);
        Assert.False(Flight.TryAtSlant(launch, e.Reach + Length.FromCentimeters(1), line, out _));
    }

    [Fact]
    public void Reach_is_counted_from_the_origin_not_from_the_launch_point()
    {
        var e = Assert.Throws<OutOfReachException>(() => Flight.At(Up(40, 70), Length.FromMeters(200)));
        var moved = Assert.Throws<OutOfReachException>(() => Flight.At(Up(40, 70) with { Forward = Length.FromMeters(3) }, Length.FromMeters(200)));
        Assert.Equal(e.Reach.Meters + 3, moved.Reach.Meters, 1e-3);
    }

    [Fact]
    public void A_target_behind_is_refused_with_both_distances()
    {
        var e = Assert.Throws<ArgumentOutOfRangeException>(() => Flight.At(Up(80, 1) with { Forward = Length.FromMeters(2) }, Length.FromMeters(1)));
        Assert.Contains("behind the launch point", e.Message);
        Assert.Contains("2 m", e.Message);
        Assert.False(Flight.TryAt(Up(80, 1), Length.FromMeters(-5), out _));
    }

    [Fact]
    public void A_launch_away_from_the_face_is_refused_with_its_direction()
    {
        var e = Assert.Throws<ArgumentOutOfRangeException>(() => Flight.AtSlant(Up(80, 60), Length.FromMeters(50), Angle.FromDegrees(-45)));
        Assert.Contains("points away", e.Message);
        Assert.Contains("60°", e.Message);
    }

    [Fact]
    public void A_head_wind_stronger_than_the_arrow_is_out_of_reach()
    {
        PointMass storm = Flight with { Wind = Wind.Of(Speed.FromMetersPerSecond(-50), Speed.Zero) };
        var e = Assert.Throws<OutOfReachException>(() => storm.At(Up(40, 0), Length.FromMeters(2000)));
        Assert.InRange(e.Reach.Meters, 1, 1000);
    }

    [Fact]
    public void The_face_at_the_launch_point_is_met_at_once()
    {
        FlightState state = Flight.At(Up(80, 3), Length.Zero);
        Assert.Equal(0, state.Time.Seconds);
        Assert.Equal(80, state.Speed.MetersPerSecond, 1e-12);
        Assert.Equal(3, state.Elevation.Degrees, 1e-12);
    }

    [Fact]
    public void Masses_and_drags_that_cannot_be_are_refused_by_name()
    {
        Assert.Equal("mass", Assert.Throws<ArgumentOutOfRangeException>(() => Drag.FromArea(Area.FromSquareMeters(1e-4), Mass.FromGrams(-20))).ParamName);
        Assert.Equal("dragArea", Assert.Throws<ArgumentOutOfRangeException>(() => Drag.FromArea(Area.FromSquareMeters(-1), Mass.FromGrams(20))).ParamName);
        Assert.Equal("k", Assert.Throws<ArgumentOutOfRangeException>(() => Drag.FromConstant(ReciprocalLength.FromInverseMeters(-0.001))).ParamName);
    }

    [Fact]
    public void A_launch_that_cannot_be_is_refused_by_name()
    {
        Assert.Equal("Speed", Assert.Throws<ArgumentOutOfRangeException>(() => Up(-1, 0)).ParamName);
        Assert.Equal("Elevation", Assert.Throws<ArgumentOutOfRangeException>(() => Up(80, 90)).ParamName);
        Assert.Equal("Azimuth", Assert.Throws<ArgumentOutOfRangeException>(() => Up(80, 0) with { Azimuth = Angle.FromDegrees(90) }).ParamName);
        Assert.Equal("Speed", Assert.Throws<ArgumentOutOfRangeException>(() => Up(301, 0)).ParamName);
    }

    [Fact]
    public void Numbers_that_are_none_never_fly()
    {
        // UnitsNet refuses them before they get here; the SI door, which has no such guard, does not claim to meet the face.
        Assert.ThrowsAny<ArgumentException>(() => Flight.At(Up(80, 0), Length.FromMeters(double.NaN)));
        Assert.ThrowsAny<ArgumentException>(() => Up(double.NaN, 0));
        Assert.NotEqual(Outcome.Met, Flight.Si.Fly(new(double.NaN, 0), 20, 0, out _, out _));
        Assert.NotEqual(Outcome.Met, Flight.Si.Fly(new(80, double.NaN), 20, 0, out _, out _));
        Assert.NotEqual(Outcome.Met, Flight.Si.Fly(new(80, 0), double.NaN, 0, out _, out _));
        Assert.NotEqual(Outcome.Met, (Flight.Si with { WindZ = double.NaN }).Fly(new(80, 0), 20, 0, out _, out _));
        Assert.NotEqual(Outcome.Met, (Flight.Si with { K = double.NaN }).Fly(new(80, 0), 20, 0, out _, out _));
    }

    [Fact]
    public void A_line_of_sight_too_steep_is_refused_with_its_range()
    {
        var e = Assert.Throws<ArgumentOutOfRangeException>(() => Flight.AtSlant(Up(80, 0), Length.FromMeters(20), Angle.FromDegrees(85)));
        Assert.Contains("from -80 to 80 degrees", e.Message);
    }

    [Fact]
    public void A_gravity_never_given_is_refused() =>
        Assert.Equal("Gravity", Assert.Throws<ArgumentOutOfRangeException>(() => Flight with { Gravity = default }).ParamName);

    [Fact]
    public void A_path_is_the_single_flights_in_the_order_given()
    {
        Length[] distances = [Length.FromYards(60), Length.FromYards(20), Length.FromYards(40)];
        IReadOnlyList<FlightState> path = Flight.Path(Up(80, 2), distances);
        Assert.Equal(distances.Select(d => Flight.At(Up(80, 2), d)), path);
    }

    [Fact]
    public void The_height_above_a_line_is_measured_square_to_it()
    {
        Angle line = Angle.FromDegrees(30);
        FlightState state = Flight.AtSlant(Up(80, 32), Length.FromMeters(50), line);
        Assert.Equal(50, state.Downrange.Meters * Math.Cos(line.Radians) + state.Up.Meters * Math.Sin(line.Radians), 1e-12);
        Assert.Equal(state.Up.Meters * Math.Cos(line.Radians) - state.Downrange.Meters * Math.Sin(line.Radians), state.AboveLine(line).Meters, 1e-12);
    }

    [Fact]
    public void The_si_door_allocates_nothing()
    {
        var mass = new PointMassSi(0.0015, 9.80665, 1, 0, 3);
        var launch = new LaunchSi(85, 0.03);
        double sum = Run(10); // compiled and warm
        long least = long.MaxValue; // of five rounds: the runtime itself may allocate once, when it compiles a method anew on this thread
        for (int round = 0; round < 5; round++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            sum += Run(1000);
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        Assert.Equal(0, least);
        Assert.True(double.IsFinite(sum));

        double Run(int times)
        {
            double total = 0;
            for (int i = 0; i < times; i++)
            {
                mass.Fly(launch, 20 + 0.05 * i, 0.1, out StateSi state, out double reach);
                mass.FlyWithSlope(launch, 20 + 0.05 * i, 0.1, out _, out double above, out double slope);
                total += state.Y + reach + above + slope;
            }

            return total;
        }
    }

    static Launch Up(double speed, double degrees) => new() { Speed = Speed.FromMetersPerSecond(speed), Elevation = Angle.FromDegrees(degrees) };
}
