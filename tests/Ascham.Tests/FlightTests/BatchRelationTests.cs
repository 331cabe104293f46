namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Flight;
using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;
using Xunit;

/// <summary>A batch against single flights, linear propagation and relations that must hold.</summary>
public class BatchRelationTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    static readonly FlightBatch Still = new()
    {
        Flight = BatchTests.Flight(0.0017, Wind.Calm),
        Launch = new() { Speed = 85.MetresPerSecond, Elevation = 2.5.Degrees, Up = -11.Centimetres },
        Faces = [60.Metres],
    };

    [Fact] // each input moved by one size is the single flight with that input moved
    public void One_size_of_each_input_is_the_single_flight_with_that_input_changed()
    {
        FlightBatch b = BatchTests.Everything with { Faces = [60.Metres], Inclination = 5.Degrees, Launch = BatchTests.Everything.Launch with { Elevation = 7.5.Degrees } };
        PointMass f = b.Flight;
        FlightState At(PointMass flight, Launch launch, double distance = 60) => flight.AtSlant(launch, distance.Metres, b.Inclination);
        PointMass Blown(double tail, double left, double up) => f with { Wind = Wind.Of((-1 + tail).MetresPerSecond, (3 + left).MetresPerSecond, up.MetresPerSecond) };

        Matches(Input.Speed, At(f, b.Launch with { Speed = 85.6.MetresPerSecond }));
        Matches(Input.Drag, At(f with { Drag = Drag.FromConstant((0.0017 * 1.03).PerMetre) }, b.Launch));
        Matches(Input.TailWind, At(Blown(1, 0, 0), b.Launch));
        Matches(Input.WindFromLeft, At(Blown(0, 2, 0), b.Launch));
        Matches(Input.Updraught, At(Blown(0, 0, 0.3), b.Launch));
        Matches(Input.Range, At(f, b.Launch, 61));
        Matches(Input.Mass, At(f with { Drag = Drag.FromConstant((0.0017 / 1.01).PerMetre) }, b.Launch with { Speed = (85 * (1 - 0.4 * 0.01)).MetresPerSecond }));
        Matches(Input.AimUp, At(f, b.Launch with { Elevation = Angle.FromRadians(b.Inclination.Radians + Math.Atan(Math.Tan(2.5 * Math.PI / 180) + 1e-3 / Math.Cos(2.5 * Math.PI / 180))) }));

        void Matches(Input input, FlightState state)
        {
            var plan = b.Plan();
            double[] drawn = new double[plan.Inputs.Length];
            drawn[(int)input] = 1;
            plan.Arrow(drawn, 1, out BatchArrow<Real> arrow);
            Strike<double> strike = plan.FlyStepByStep(arrow, 0);
            Assert.Equal(state.AboveLine(b.Inclination).Meters, strike.Up, 1e-6);
            Assert.Equal(state.Right.Meters, strike.Right, 1e-6);
            Assert.Equal(state.Time.Seconds, strike.Time, 1e-8);
            Assert.Equal(state.Speed.MetersPerSecond, strike.Speed, 1e-5);
        }
    }

    [Fact] // relation: a canted bow throws right and low by what turning the launch about the line does; a straight line of flight would turn as a whole
    public void Cant_turns_launch_and_start_about_the_line()
    {
        FlightBatch fast = Still with { Flight = BatchTests.Flight(0, Wind.Calm), Launch = Still.Launch with { Speed = 299.MetresPerSecond }, Cant = Deviation.Uniform(10.Degrees), Faces = [10.Metres] };
        var plan = fast.Plan();
        double[] drawn = new double[plan.Inputs.Length];
        drawn[(int)Input.Cant] = 1;
        plan.Arrow(drawn, 1, out BatchArrow<Real> arrow);
        Strike<double> canted = plan.FlyStepByStep(arrow, 0);
        double drop = 0.5 * 9.80665 * canted.Time * canted.Time, up = plan.Nominal(0).Up + drop, c = 10 * Math.PI / 180; // gravity does not turn
        Assert.Equal(up * Math.Sin(c), canted.Right, 1e-9);
        Assert.Equal(up * Math.Cos(c) - drop, canted.Up, 1e-9);
    }

    [Fact] // independent: plain loops over single flights, another generator, another transformation
    public void Means_and_spreads_are_those_of_plain_loops()
    {
        FlightBatch batch = Still with
        {
            LaunchSpeed = Deviation.Normal(0.8.MetresPerSecond),
            AimRight = Deviation.Normal(1.Milliradians),
            WindFromLeft = Deviation.Normal(1.MetresPerSecond),
            Range = Deviation.Uniform(1.Metres),
        };
        var random = new Random(5);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        const int N = 20_000;
        double[] up = new double[N], right = new double[N];
        for (int i = 0; i < N; i++)
        {
            var mass = new PointMassSi(0.0017, 9.80665, 0, 0, Normal());
            var launch = new LaunchSi(85 + 0.8 * Normal(), 2.5 * Math.PI / 180, 1e-3 * Normal() / Math.Cos(2.5 * Math.PI / 180), 0, -0.11);
            Assert.Equal(Outcome.Met, mass.Fly(launch, 60 + 2 * random.NextDouble() - 1, 0, out StateSi s, out _));
            (up[i], right[i]) = (s.Y, s.Z);
        }

        FaceResult face = batch.Summarise(new() { Arrows = 200_000, Seed = 8, Level = 0.95 }, cancellation: Stop).Faces[0];
        double sdUp = BatchTests.Sd(up), sdRight = BatchTests.Sd(right), root = Math.Sqrt(N / 1.1); // both samples have their error
        Assert.Equal(up.Average(), face.MeanUp.Value.Meters, 4 * sdUp / root);
        Assert.Equal(right.Average(), face.MeanRight.Value.Meters, 4 * sdRight / root);
        Assert.InRange(face.SdUp.Value.Meters / sdUp, 1 - 4 / Math.Sqrt(2) / root, 1 + 4 / Math.Sqrt(2) / root);
        Assert.InRange(face.SdRight.Value.Meters / sdRight, 1 - 4 / Math.Sqrt(2) / root, 1 + 4 / Math.Sqrt(2) / root);
    }

    [Fact] // independent: the sum of squares of slope times size, slopes by central differences of single flights
    public void Small_scatter_spreads_as_linear_propagation_says()
    {
        FlightBatch batch = BatchTests.Everything with
        {
            Faces = [60.Metres],
            LaunchSpeed = Deviation.Normal(0.06.MetresPerSecond),
            DragArea = Deviation.Normal(0.3.Percent),
            AimUp = Deviation.Normal(0.1.Milliradians),
            AimRight = Deviation.Normal(0.1.Milliradians),
            TailWind = Deviation.Normal(0.1.MetresPerSecond),
            WindFromLeft = Deviation.Uniform(0.2.MetresPerSecond),
            Updraught = Deviation.Normal(0.03.MetresPerSecond),
            Range = Deviation.Uniform(10.Centimetres),
            Cant = Deviation.Normal(0.2.Degrees),
            Mass = Deviation.Normal(0.1.Percent),
        };
        var plan = batch.Plan();
        double up = 0, right = 0, both = 0;
        for (int input = 0; input < plan.Inputs.Length; input++)
        {
            double[] drawn = new double[plan.Inputs.Length];
            Strike<double> Moved(double by)
            {
                drawn[input] = by;
                plan.Arrow(drawn, 1, out BatchArrow<Real> arrow);
                return plan.FlyStepByStep(arrow, 0);
            }

            Strike<double> more = Moved(0.1), less = Moved(-0.1);
            double variance = plan.Inputs[input].Shape == DeviationShape.Uniform ? 1 / 3.0 : 1, u = (more.Up - less.Up) / 0.2, r = (more.Right - less.Right) / 0.2;
            up += variance * u * u;
            right += variance * r * r;
            both += variance * u * r;
        }

        FaceResult face = batch.Summarise(new() { Arrows = 65_536, Seed = 2, Level = 0.95, Sampling = Sampling.EvenlySpread }, cancellation: Stop).Faces[0];
        Assert.InRange(face.SdUp.Value.Meters / Math.Sqrt(up), 0.999, 1.001);
        Assert.InRange(face.SdRight.Value.Meters / Math.Sqrt(right), 0.999, 1.001);
        Assert.Equal(both / Math.Sqrt(up * right), face.Correlation.Value, 2e-3);
    }

    [Fact]
    public void A_mirrored_wind_mirrors_the_drift()
    {
        Wind from = Wind.Of(-2.MetresPerSecond, 4.MetresPerSecond), back = Wind.Of(-2.MetresPerSecond, -4.MetresPerSecond);
        FlightBatch left = Still with { Flight = BatchTests.Flight(0.0017, from), LaunchSpeed = Deviation.Normal(1.MetresPerSecond) }, right = left with { Flight = BatchTests.Flight(0.0017, back) };
        BatchStrikes a = BatchTests.Strikes(left, 300, 6), b = BatchTests.Strikes(right, 300, 6);
        Assert.Equal(a.RightMetres(0).ToArray().Select(x => -x), b.RightMetres(0).ToArray());
        Assert.Equal(a.UpMetres(0).ToArray(), b.UpMetres(0).ToArray());
    }

    [Fact]
    public void Without_drag_every_arrow_is_on_its_parabola()
    {
        FlightBatch batch = Still with { Flight = BatchTests.Flight(0, Wind.Calm), LaunchSpeed = Deviation.Normal(3.MetresPerSecond) };
        BatchStrikes strikes = BatchTests.Strikes(batch, 300, 6);
        for (int i = 0; i < 300; i++)
        {
            double t = strikes.TimeSeconds(0)[i], up = -0.11 + 60 * Math.Tan(2.5 * Math.PI / 180) - 0.5 * 9.80665 * t * t;
            Assert.Equal(up, strikes.UpMetres(0)[i], 1e-9);
        }
    }

    [Fact]
    public void Mass_and_drag_area_doubled_together_and_units_changed_leave_every_arrow_unchanged()
    {
        Drag Of(double area, double mass) => Drag.FromArea(Area.FromSquareMeters(area), Mass.FromKilograms(mass));
        FlightBatch once = Still with { Flight = Still.Flight with { Drag = Of(5e-5, 0.0259) }, DragArea = Deviation.Normal(5.Percent), Range = Deviation.Normal(0.9144.Metres) };
        FlightBatch twice = once with { Flight = Still.Flight with { Drag = Of(1e-4, 0.0518) }, DragArea = Deviation.Normal(Ratio.FromDecimalFractions(0.05)) };
        FlightBatch imperial = once with { Range = Deviation.Normal(1.Yards), Faces = [Length.FromFeet(60 / 0.3048)] };
        double[] up = BatchTests.Strikes(once, 300, 6).UpMetres(0).ToArray();
        Assert.Equal(up, BatchTests.Strikes(twice, 300, 6).UpMetres(0).ToArray(), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal(up, BatchTests.Strikes(imperial, 300, 6).UpMetres(0).ToArray(), (a, b) => Math.Abs(a - b) < 1e-12);
    }

    [Fact]
    public void More_drag_never_arrives_faster()
    {
        FlightBatch less = Still with { LaunchSpeed = Deviation.Normal(3.MetresPerSecond) }, more = less with { Flight = BatchTests.Flight(0.0019, Wind.Calm) };
        BatchStrikes a = BatchTests.Strikes(less, 300, 6), b = BatchTests.Strikes(more, 300, 6);
        Assert.All(Enumerable.Range(0, 300), i => Assert.True(b.TimeSeconds(0)[i] > a.TimeSeconds(0)[i] && b.SpeedMetresPerSecond(0)[i] < a.SpeedMetresPerSecond(0)[i]));
    }

    [Fact]
    public void A_batch_without_scatter_is_the_single_flight_again_and_again()
    {
        FaceResult face = Still.Summarise(new() { Arrows = 100, Seed = 1, Level = 0.95 }, cancellation: Stop).Faces[0];
        Assert.Equal(Still.Flight.At(Still.Launch, 60.Metres).Up.Meters, face.MeanUp.Value.Meters, 1e-6);
        Assert.Equal(0, face.SdUp.Value.Meters, 1e-9);
        Assert.Equal(0, face.Correlation.Value);
    }
}
