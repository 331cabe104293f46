namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Flight;
using Ascham.Tests.AirTests;
using UnitsNet;
using Xunit;

/// <summary>Derivatives of the impact by every input, from one pass.</summary>
public class SensitivityTests
{
    const double Degree = Math.PI / 180;

    static readonly AuthorityFile Derived = new("flight-sensitivity-derived.csv");

    public static TheoryData<int> DerivedRows => AuthorityFile.Rows("flight-sensitivity-derived.csv");

    public static TheoryData<string, string> Flights
    {
        get
        {
            var all = new TheoryData<string, string>();
            foreach (string law in (string[])["constant", "turbulent", "streamlined point", "table"])
            {
                foreach (string wind in (string[])["steady", "stretches", "profile"])
                {
                    all.Add(law, wind);
                }
            }

            return all;
        }
    }

    [Theory, MemberData(nameof(Flights))]
    public void Every_derivative_is_the_slope_of_nearby_flights(string law, string wind)
    {
        const double Line = 8 * Degree, Distance = 71;
        var launch = new LaunchSi(68, 12 * Degree, 1 * Degree, 0.3, -0.1, 0.05);
        WindField field = wind switch { "stretches" => VaryingWindTests.Stretches, "profile" => VaryingWindTests.Profile, _ => Wind.Of(Speed.FromMetersPerSecond(-3), Speed.FromMetersPerSecond(6)) };
        PointMassSi mass = AnyDrag.Flight(law).In(field);
        int steps = law == "table" ? 500 : 60;
        Assert.Equal(Outcome.Met, Sensitivity.Fly(mass, launch, Face.Square(Distance, Line), steps, out Sensitivity s, out _));
        Assert.Equal(Outcome.Met, Sensitivity.Fly(mass, launch, Face.Square(Distance, Line), 0, out Sensitivity asIs, out _));
        for (int input = 0; input < 8; input++)
        {
            Assert.Equal(s.Above[input], asIs.Above[input], 1e-5 * (1 + Math.Abs(s.Above[input]))); // at the default step too
        }

        Check(s.By<Speed>(Sensitivity.Speed), 1e-2, h => (mass, launch with { Speed = launch.Speed + h }, Distance));
        Check(s.By<Angle>(Sensitivity.Elevation), 1e-3, h => (mass, launch with { Elevation = launch.Elevation + h }, Distance));
        Check(s.By<Angle>(Sensitivity.Azimuth), 1e-3, h => (mass, launch with { Azimuth = launch.Azimuth + h }, Distance));
        Check(s.By<Speed>(Sensitivity.Tail), 1e-2, h => (mass with { WindX = mass.WindX + h }, launch, Distance));
        Check(s.By<Speed>(Sensitivity.Up), 1e-2, h => (mass with { WindY = mass.WindY + h }, launch, Distance));
        Check(s.By<Speed>(Sensitivity.Across), 1e-2, h => (mass with { WindZ = mass.WindZ + h }, launch, Distance));
        Check(s.ByRange, 1e-2, h => (mass, launch, Distance + h));
        Check(s.By<Ratio>(Sensitivity.Drag), law == "constant" ? 1e-6 : 1e-3, h => (mass.Curve is null
            ? mass with { K = mass.K + h }
            : PointMassSi.Of(AnyDrag.Named(law).Times(1 + h), mass.Air!, mass.Gravity).In(field), launch, Distance));

        void Check<T>(ImpactRate<T> rate, double h, Func<double, (PointMassSi, LaunchSi, double)> changed)
            where T : IQuantity
        {
            StateSi At(double by)
            {
                (PointMassSi m, LaunchSi l, double distance) = changed(by);
                Assert.Equal(Outcome.Met, m.Fly(l, Face.Square(distance, Line), steps, out StateSi state, out _));
                return state;
            }

            StateSi[] near = [At(-2 * h), At(-h), At(h), At(2 * h)];
            double Slope(Func<StateSi, double> of) => (8 * (of(near[2]) - of(near[1])) - (of(near[3]) - of(near[0]))) / (12 * h); // error of order h^4
            void Same(double expected, double actual, string what) =>
                Assert.True(Math.Abs(expected - actual) < 2e-5 * (Math.Abs(expected) + 0.01), FormattableString.Invariant($"{what} by {typeof(T).Name}: {expected:R} by differences, {actual:R} by the pass"));
            Same(Slope(n => n.Above(Line)), rate.Up, "up");
            Same(Slope(n => n.Z), rate.Right, "right");
            Same(Slope(n => n.Time), rate.Time, "time");
            Same(Slope(n => n.Speed), rate.Speed, "speed");
        }
    }

    [Theory]
    [InlineData("turbulent")]
    [InlineData("table")]
    public void The_derivative_by_density_is_that_of_flights_in_other_air_of_the_same_viscosity(string law)
    {
        // Viscosity depends on temperature alone: air at another pressure is the same but for its density.
        Air At(double hectopascals) => Air.Moist(Temperature.FromDegreesCelsius(12), Pressure.FromHectopascals(hectopascals), Ratio.Zero);
        PointMass flight = new() { Drag = AnyDrag.Named(law), Air = At(1000), Gravity = Gravity.Standard, Wind = Wind.Calm };
        Launch launch = new() { Speed = Speed.FromMetersPerSecond(70), Elevation = Angle.FromDegrees(3) };
        ImpactSensitivities s = flight.SensitivitiesAt(launch, Length.FromMeters(70), Angle.Zero);
        FlightState less = (flight with { Air = At(998) }).At(launch, Length.FromMeters(70)), more = (flight with { Air = At(1002) }).At(launch, Length.FromMeters(70));
        Assert.Equal((more.Up - less.Up).Meters / 0.004, s.Density.Up, 1e-3 * Math.Abs(s.Density.Up));
        Assert.Equal((more.Time - less.Time).Seconds / 0.004, s.Density.Time, 1e-3 * Math.Abs(s.Density.Time));
        Assert.Null(s.DragConstant);
    }

    [Theory, MemberData(nameof(DerivedRows))]
    public void Derivatives_predict_the_shifts_tabulated_from_whole_flights(int row)
    {
        double distance = Derived.Value(row, "yd") * 0.9144, expected = Derived.Value(row, "shift_mm"), cause = Derived.Value(row, "cause");
        bool level = cause is 1 or 2 or 6;
        double speed = level ? 85 : 84, k = level ? 0.0012 : 0.0015;
        var mass = new PointMassSi(k, 9.80665, 0, 0, 0);
        LaunchSi launch = cause is 1 or 2 ? new(speed, 0) : Sighted(mass, new(speed, 0, 0, 0, level ? 0 : -0.110), distance);
        double change = cause switch { 2 or 5 => 0.1 * k, 3 => 1e-3, 4 => -0.01 * speed, 6 => 2, 7 => 0.9144, _ => 1 };
        double Slope(double by) => cause switch
        {
            1 or 4 => Slopes(mass, launch with { Speed = speed + by }, distance).By<Speed>(Sensitivity.Speed).Up,
            2 or 5 => Slopes(mass with { K = k + by }, launch, distance).By<Ratio>(Sensitivity.Drag).Up,
            3 => Slopes(mass, launch with { Elevation = launch.Elevation + by }, distance).By<Angle>(Sensitivity.Elevation).Up,
            6 => Slopes(mass with { WindZ = by }, launch, distance).By<Speed>(Sensitivity.Across).Right,
            _ => Slopes(mass, launch, distance + by).ByRange.Up,
        };

        // The table holds finite changes: the mean of the slopes before and after, times the change, leaves their third order only.
        double predicted = 1e3 * change * (Slope(0) + Slope(change)) / 2;
        double allowed = 2e-3 * Math.Abs(expected) + 0.6 * Derived.Value(row, "last_digit_mm");
        Assert.InRange(predicted, expected - allowed, expected + allowed);
    }

    [Fact]
    public void The_public_door_gives_units_and_signs()
    {
        PointMass flight = new() { Drag = Drag.FromConstant(ReciprocalLength.FromInverseMeters(0.0015)), Air = AnyDrag.Standard, Gravity = Gravity.Standard, Wind = Wind.Calm };
        Launch launch = new() { Speed = Speed.FromMetersPerSecond(84), Elevation = Angle.FromDegrees(2) };
        ImpactSensitivities s = flight.SensitivitiesAt(launch, Length.FromYards(60), Angle.Zero);
        Assert.Equal(flight.At(launch, Length.FromYards(60)).Up.Meters, s.Impact.Up.Meters, 1e-6);

        Assert.Equal(s.LaunchSpeed.Up * 0.3048, s.LaunchSpeed.For(Speed.FromFeetPerSecond(1)).Up.Meters, 1e-12);
        Assert.True(s.LaunchSpeed.For(Speed.FromFeetPerSecond(1)).Time < Duration.Zero);
        Assert.InRange(s.Elevation.For(Angle.FromMilliradians(1)).Up.Millimeters, 54, 56); // 60 yd is 54.9 m
        Assert.InRange(s.Azimuth.For(Angle.FromMilliradians(1)).Right.Millimeters, 54, 56);
        Assert.Equal(s.Drag.For(Ratio.FromPercent(10)).Up.Meters, s.DragConstant!.For(ReciprocalLength.FromInverseMeters(0.00015)).Up.Meters, 1e-12);
        Assert.Equal(-s.Drag.Up, s.Mass.Up, 1e-15);
        Assert.Equal(s.Drag.Up, s.Density.Up, 1e-15);
        Assert.True(s.TailWind.Up > 0 && s.WindFromLeft.Right > 0 && s.Updraught.Up > 0 && s.Drag.Speed < 0);
        Assert.Equal(Math.Tan(s.Impact.Elevation.Radians), s.Range.Up, 1e-12);
    }

    [Fact]
    public void A_change_of_mass_is_that_of_the_drag_per_mass()
    {
        Area area = Area.FromSquareMillimeters(60);
        PointMass With(double grams) => new() { Drag = Drag.FromArea(area, Mass.FromGrams(grams)), Air = AnyDrag.Standard, Gravity = Gravity.Standard, Wind = Wind.Calm };
        Launch launch = new() { Speed = Speed.FromMetersPerSecond(80), Elevation = Angle.FromDegrees(2) };
        double shift = (With(26.026).At(launch, Length.FromMeters(60)).Up - With(26).At(launch, Length.FromMeters(60)).Up).Millimeters;
        Assert.Equal(shift, With(26).SensitivitiesAt(launch, Length.FromMeters(60), Angle.Zero).Mass.For(Ratio.FromPercent(0.1)).Up.Millimeters, 2e-3 * shift);
    }

    [Fact]
    public void Out_of_reach_is_told_as_by_a_plain_flight()
    {
        PointMass flight = new() { Drag = AnyDrag.Named("turbulent"), Air = AnyDrag.Standard, Gravity = Gravity.Standard, Wind = Wind.Calm };
        Launch launch = new() { Speed = Speed.FromMetersPerSecond(40), Elevation = Angle.FromDegrees(70) };
        var plain = Assert.Throws<OutOfReachException>(() => flight.At(launch, Length.FromMeters(300)));
        var e = Assert.Throws<OutOfReachException>(() => flight.SensitivitiesAt(launch, Length.FromMeters(300), Angle.Zero));
        Assert.Equal(plain.Reach.Meters, e.Reach.Meters, 1e-9);
    }

    static Sensitivity Slopes(PointMassSi mass, LaunchSi launch, double distance)
    {
        Assert.Equal(Outcome.Met, Sensitivity.Fly(mass, launch, Face.Square(distance, 0), 0, out Sensitivity s, out _));
        return s;
    }

    static LaunchSi Sighted(PointMassSi mass, LaunchSi launch, double distance)
    {
        for (int i = 0; i < 8; i++)
        {
            Assert.Equal(Outcome.Met, mass.FlyWithSlope(launch, distance, 0, out _, out double above, out double slope));
            launch = launch with { Elevation = launch.Elevation - above / slope };
        }

        return launch;
    }
}
