namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Flight;
using Ascham.Numerics;
using Ascham.Tests.Checks;
using CsCheck;
using UnitsNet;
using Xunit;

/// <summary>Wind that differs from place to place.</summary>
public class VaryingWindTests
{
    const double Degree = Math.PI / 180;

    internal static readonly WindSegments Stretches = WindSegments.Of(
        Of(1, -3), (Length.FromMeters(20), Of(-4, 5)), (Length.FromMeters(47), Of(2, 8)));

    internal static readonly WindProfile Profile = new()
    {
        AtReference = Of(-4, 6), ReferenceHeight = Length.FromMeters(10), Exponent = 1.0 / 7, OriginAboveGround = Length.FromMeters(1.6), GroundSlope = Angle.Zero,
    };

    static readonly LaunchSi Launch = new(72, 3 * Degree, 0.3 * Degree, 0.5, -0.1, 0.02);

    public static TheoryData<string> Laws => ["constant", "turbulent", "tanh"];

    [Fact]
    public void One_steady_wind_is_the_same_by_every_path()
    {
        Wind wind = Of(-3, 6, 1);
        StateSi steady = Fly(AnyDrag.Flight("turbulent").In(wind), 80, 0);
        StateSi stretches = Fly(AnyDrag.Flight("turbulent").In(WindSegments.Of(wind, (Length.FromMeters(30), wind), (Length.FromMeters(31), wind))), 80, 0);
        StateSi profile = Fly(AnyDrag.Flight("turbulent").In(Profile with { AtReference = wind, Exponent = 0 }), 80, 0);
        Near(steady, stretches, 1e-7);
        Near(steady, profile, 1e-6);
    }

    [Theory, MemberData(nameof(Laws))]
    public void Stretches_are_flights_end_to_end(string law)
    {
        // The same, each stretch flown by hand from where the last one ended.
        PointMassSi mass = AnyDrag.Flight(law);
        StateSi whole = Fly(mass.In(Stretches), 75, 0);
        LaunchSi from = Launch;
        double time = 0;
        StateSi state = default;
        foreach (var (wind, end) in new[] { (Of(1, -3), 20.0), (Of(-4, 5), 47), (Of(2, 8), 75) })
        {
            Assert.Equal(Outcome.Met, mass.In(wind).Fly(from, end, 0, out state, out _));
            time += state.Time;
            from = new(state.Speed, Math.Atan2(state.Vy, Math.Sqrt(state.Vx * state.Vx + state.Vz * state.Vz)), Math.Atan2(state.Vz, state.Vx), state.X, state.Y, state.Z);
        }

        Near(state with { Time = time }, whole, 1e-10);
    }

    [Theory, MemberData(nameof(Laws))]
    public void Stretches_by_the_six_equations_arrive_at_the_same_place(string law)
    {
        // The six equations, with steps that end on the boundaries: an independent form of the same flight.
        PointMassSi mass = AnyDrag.Flight(law);
        const double Line = 12 * Degree;
        LaunchSi launch = Launch with { Elevation = 15 * Degree };
        Assert.Equal(Outcome.Met, mass.In(Stretches).Fly(launch, 75, Line, out StateSi whole, out _));

        var shot = new Shot<Real>
        {
            Velocity = Shot<Real>.Direct(new(launch.Speed), (new(Math.Sin(launch.Elevation)), new(Math.Cos(launch.Elevation))), (new(Math.Sin(launch.Azimuth)), new(Math.Cos(launch.Azimuth)))),
            Wind = default, Varying = null, Gravity = new(mass.Gravity), DragFactor = new(1), DensityFactor = new(1), From = launch.From,
        };
        foreach (var (wind, end) in new[] { (Of(1, -3), 20.0), (Of(-4, 5), 47), (Of(2, 8), 75) })
        {
            Face face = Face.Square(end, Line);
            double start = face.Cosine * shot.From.X.Value + face.Sine * shot.From.Y.Value;
            Assert.Equal(Outcome.Met, Flown.Through(shot, new Uniform(wind), new Law(mass), face, start, 24, out Arrival<Real> leg));
            shot = new()
            {
                Velocity = leg.Velocity, Wind = default, Varying = null, Gravity = shot.Gravity, DragFactor = new(1), DensityFactor = new(1), From = shot.From + leg.Moved,
            };
        }

        Assert.Equal(shot.From.X.Value, whole.X, 1e-7);
        Assert.Equal(shot.From.Y.Value, whole.Y, 1e-7);
        Assert.Equal(shot.From.Z.Value, whole.Z, 1e-7);
        Assert.Equal(shot.Velocity.X.Value, whole.Vx, 1e-6);
    }

    [Fact]
    public void A_wind_that_begins_beyond_the_face_changes_nothing() =>
        Near(Fly(AnyDrag.Flight("constant"), 40, 0), Fly(AnyDrag.Flight("constant").In(WindSegments.Of(Wind.Calm, (Length.FromMeters(40), Of(0, 9)))), 40, 0), 1e-6);

    [Fact]
    public void A_wind_near_the_archer_moves_the_arrow_more_than_the_same_wind_near_the_target()
    {
        Wind gust = Of(0, 5);
        double Drift(WindField wind) => Fly(AnyDrag.Flight("constant").In(wind), 60, 0).Z;
        double calm = Drift(Wind.Calm);
        double early = Drift(WindSegments.Of(gust, (Length.FromMeters(20), Wind.Calm))) - calm;
        double late = Drift(WindSegments.Of(Wind.Calm, (Length.FromMeters(40), gust))) - calm;
        Assert.True(early > 3 * late && late > 0, $"{early} {late}");
    }

    [Theory, MemberData(nameof(Laws))]
    public void Order_of_convergence_is_eight_in_wind_that_varies_smoothly_along_the_range(string law)
    {
        PointMassSi mass = AnyDrag.Flight(law);
        LaunchSi launch = Launch with { Elevation = 9 * Degree };
        Triple<Real> At(int steps)
        {
            var shot = new Shot<Real>
            {
                Velocity = Shot<Real>.Direct(new(launch.Speed), (new(Math.Sin(launch.Elevation)), new(Math.Cos(launch.Elevation))), (new(0), new(1))),
                Wind = default, Varying = null, Gravity = new(mass.Gravity), DragFactor = new(1), DensityFactor = new(1), From = default,
            };
            Assert.Equal(Outcome.Met, Flown.Through(shot, new Waves(), new Law(mass), Face.Square(90, 4 * Degree), 0, steps, out Arrival<Real> end));
            return end.Moved;
        }

        Triple<Real> exact = At(512);
        double Error(Triple<Real> r) => Math.Max(Math.Abs(r.Y.Value - exact.Y.Value), Math.Abs(r.Z.Value - exact.Z.Value));
        Assert.All(Order.Observed(n => Error(At(n)), 8, 1), o => Assert.InRange(o, 7.2, 9.2));
    }

    [Theory, MemberData(nameof(Laws))]
    public void Order_of_convergence_is_eight_in_each_stretch_and_in_a_profile(string law)
    {
        LaunchSi launch = Launch with { Elevation = 12 * Degree };
        foreach (WindField wind in new WindField[] { Stretches, Profile with { OriginAboveGround = Length.FromMeters(6) } })
        {
            PointMassSi mass = AnyDrag.Flight(law).In(wind);
            StateSi At(int steps)
            {
                Assert.Equal(Outcome.Met, mass.Fly(launch, Face.Square(88, 0), steps, out StateSi s, out _));
                return s;
            }

            StateSi exact = At(512);
            double Error(StateSi s) => Math.Max(Math.Abs(s.Y - exact.Y), Math.Abs(s.Z - exact.Z));
            // The stretches are so short that two steps on each leave 1e-10 m.
            Assert.All(Order.Observed(n => Error(At(n)), wind is WindSegments ? 1 : 8, 1), o => Assert.InRange(o, 6.8, 10));
        }
    }

    [Fact]
    public void The_default_step_in_a_profile_is_within_a_micrometre_of_fine_steps()
    {
        var random = new Random(5);
        double worst = 0;
        foreach (string law in (string[])["constant", "turbulent", "streamlined point", "table"])
        {
            for (int counted = 0; counted < 40;)
            {
                double Pick(double low, double high) => random.Next(4) switch { 0 => low, 1 => high, _ => low + (high - low) * random.NextDouble() };
                double line = Pick(-40, 40) * Degree, distance = Pick(5, 120);
                PointMassSi mass = AnyDrag.Flight(law).In(new WindProfile
                {
                    AtReference = Of(Pick(-8, 8), Pick(-8, 8)), ReferenceHeight = Length.FromMeters(Pick(1, 10)), Exponent = Pick(0.1, 0.4),
                    OriginAboveGround = Length.FromMeters(Pick(1, 3)), GroundSlope = Angle.FromRadians(line),
                });
                var launch = new LaunchSi(Pick(45, 120), line + Pick(0, 12) * Degree);
                if (mass.Fly(launch, distance, line, out StateSi s, out _) != Outcome.Met || s.Above(line) < -1
                    || mass.Fly(launch, Face.Square(distance, line), law == "table" ? 1000 : 150, out StateSi fine, out _) != Outcome.Met)
                {
                    continue;
                }

                counted++;
                double error = Math.Max(Math.Abs(s.Above(line) - fine.Above(line)), Math.Abs(s.Z - fine.Z));
                Assert.True(error < 1e-6, FormattableString.Invariant($"{law} off by {error:E2} m: {launch}, {mass.Varying}, line {line / Degree}°, {distance} m"));
                worst = Math.Max(worst, error);
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"profile: worst of 160: {worst:E1} m"));
    }

    [Fact]
    public void A_mirrored_varying_wind_mirrors_the_drift() => Gen.Select(Gen.Double[-6, 6], Gen.Double[-8, 8], Gen.Double[20, 80]).Sample((tail, across, distance) =>
    {
        var straight = new LaunchSi(80, 0.03);
        PointMassSi mass = AnyDrag.Flight("turbulent");
        StateSi right = Fly(mass.In(Profile with { AtReference = Of(tail, across) }), distance, 0, straight);
        StateSi left = Fly(mass.In(Profile with { AtReference = Of(tail, -across) }), distance, 0, straight);
        return right.Z == -left.Z && right.Y == left.Y && right.Time == left.Time;
    });

    [Fact]
    public void The_profile_grows_with_height_and_holds_below_its_floor()
    {
        Assert.Equal(6 * Math.Pow(0.2, 1.0 / 7), Profile.AtHeight(Length.FromMeters(2)).FromLeft.MetersPerSecond, 1e-12);
        Assert.Equal(6, Profile.AtHeight(Length.FromMeters(10)).FromLeft.MetersPerSecond, 1e-12);
        Assert.Equal(Profile.AtHeight(WindProfile.Floor), Profile.AtHeight(Length.Zero));
    }

    [Fact]
    public void The_lag_rule_holds_for_a_steady_crosswind_within_its_own_error()
    {
        // Didion's rule as derived in R. L. McCoy, BRL Report 1900 (1976; number and year from memory): drift = W (t - X/V downrange at launch), flat fire.
        PointMassSi mass = AnyDrag.Flight("constant");
        var level = new LaunchSi(85, 0.035);
        double t = Fly(mass, 60, 0, level).Time, drift = Fly(mass.In(Of(0, 2)), 60, 0, level).Z;
        Assert.InRange(2 * (t - 60 / (85 * Math.Cos(0.035))) / drift, 0.998, 1.002);
    }

    [Fact]
    public void Failures_are_told_in_varying_wind_too()
    {
        PointMass flight = new() { Drag = AnyDrag.Named("constant"), Air = AnyDrag.Standard, Gravity = Gravity.Standard, Wind = Stretches };
        Launch launch = new() { Speed = Speed.FromMetersPerSecond(60), Elevation = Angle.FromDegrees(70) };
        foreach (WindField wind in new WindField[] { Stretches, Profile })
        {
            var e = Assert.Throws<OutOfReachException>(() => (flight with { Wind = wind }).At(launch, Length.FromMeters(400)));
            Assert.InRange(e.Reach.Meters, 100, 390);
            Assert.Throws<ArgumentOutOfRangeException>(() => (flight with { Wind = wind }).At(launch, Length.FromMeters(-1)));
            Assert.Equal(0, (flight with { Wind = wind }).At(launch, Length.Zero).Time.Seconds);
        }

        Assert.NotEqual(Outcome.Met, flight.Si.Fly(new(double.NaN, 0), 20, 0, out _, out _));
        Assert.NotEqual(Outcome.Met, (flight with { Wind = Profile }).Si.Fly(new(80, double.NaN), 20, 0, out _, out _));
    }

    [Fact]
    public void Winds_that_cannot_be_are_refused_by_name()
    {
        Assert.Contains("rise", Assert.Throws<ArgumentException>(() => WindSegments.Of(Wind.Calm, (Length.FromMeters(20), Wind.Calm), (Length.FromMeters(20), Wind.Calm))).Message);
        Assert.Equal("From", Assert.Throws<ArgumentOutOfRangeException>(() => WindSegments.Of(Wind.Calm, (Length.Zero, Wind.Calm))).ParamName);
        Assert.Equal("Exponent", Assert.Throws<ArgumentOutOfRangeException>(() => Profile with { Exponent = double.NaN }).ParamName);
        Assert.Equal("ReferenceHeight", Assert.Throws<ArgumentOutOfRangeException>(() => Profile with { ReferenceHeight = Length.Zero }).ParamName);
        Assert.Equal("height", Assert.Throws<ArgumentOutOfRangeException>(() => Profile.AtHeight(Length.FromMeters(-1))).ParamName);
        Assert.Equal(Stretches, WindSegments.Of(Of(1, -3), (Length.FromMeters(20), Of(-4, 5)), (Length.FromMeters(47), Of(2, 8))));
    }

    static Wind Of(double tail, double fromLeft, double up = 0) => Wind.Of(Speed.FromMetersPerSecond(tail), Speed.FromMetersPerSecond(fromLeft), Speed.FromMetersPerSecond(up));

    static StateSi Fly(PointMassSi mass, double distance, double line) => Fly(mass, distance, line, Launch);

    static StateSi Fly(PointMassSi mass, double distance, double line, LaunchSi launch)
    {
        Assert.Equal(Outcome.Met, mass.Fly(launch, distance, line, out StateSi state, out _));
        return state;
    }

    static void Near(StateSi a, StateSi b, double tolerance)
    {
        Assert.Equal(a.Y, b.Y, tolerance);
        Assert.Equal(a.Z, b.Z, tolerance);
        Assert.Equal(a.Time, b.Time, tolerance);
        Assert.Equal(a.Vx, b.Vx, 10 * tolerance);
        Assert.Equal(a.Vy, b.Vy, 10 * tolerance);
    }

    /// <summary>The drag of a flight, for the path called by hand.</summary>
    readonly struct Law(PointMassSi mass) : IDragLaw<Real>
    {
        public Real At(Real airSpeed) => new(mass.Curve?.At(airSpeed.Value, mass.Air!) ?? mass.K);

        public double Room(double airSpeed, bool? slowing) => double.PositiveInfinity;

        public bool Covers(double airSpeed) => true;
    }

    readonly struct Uniform(Wind wind) : IWindLaw<Real>
    {
        public Triple<Real> At(Triple<Real> place) => new(new(wind.AlongSi), new(wind.UpSi), new(wind.AcrossSi));

        public double Room(Triple<Real> place, Triple<Real> perMetre, double bend) => double.PositiveInfinity;
    }

    /// <summary>Wind in waves along the range.</summary>
    readonly struct Waves : IWindLaw<Real>
    {
        public Triple<Real> At(Triple<Real> place) => new(new(3 * Math.Sin(place.X.Value / 15)), new(0), new(6 * Math.Cos(place.X.Value / 20)));

        public double Room(Triple<Real> place, Triple<Real> perMetre, double bend) => 5;
    }
}
