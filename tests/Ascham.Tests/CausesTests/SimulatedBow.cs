namespace Ascham.Tests.CausesTests;

using Ascham.Air;
using Ascham.Causes;
using Ascham.Flight;
using Ascham.Groups;
using Ascham.Sights;
using Ascham.Tests.ArrowsTests;
using UnitsNet;

/// <summary>
/// A bow, an archer and a range that know more physics than the ranking does: rigid arrows that leave with pitch and yaw, gusts, skewed loosing,
/// a wild arrow now and then, arrows that are not alike, a speed that follows the weight by a power of its own.
/// </summary>
sealed class SimulatedBow
{
    const double Yard = 0.9144;

    readonly Random random;
    readonly double speed, mass, moving, power, drag, peepHeight, zeroUp, zeroRight, sigmaThen;
    readonly Dictionary<double, (double Angle, double Right)> marks = [];
    readonly (double Up, double Right)[] arrows;

    internal SimulatedBow(int seed)
    {
        random = new(seed);
        (speed, mass, drag) = (Even(70, 98), Even(0.020, 0.032), 0.0016 * Math.Exp(0.25 * Normal()));
        (moving, power, peepHeight) = (Even(0.004, 0.009), 1 + 0.15 * Normal(), Even(0.09, 0.13));
        drag = Math.Clamp(drag, 0.0007, 0.003) * 0.026 / mass;
        (zeroUp, zeroRight) = (0.4 * Normal(), 0.4 * Normal());
        sigmaThen = Math.Exp(Even(Math.Log(0.4), Math.Log(2.0)));
        arrows = [.. Enumerable.Range(0, 6).Select(_ => (0.25 * sigmaThen * Normal(), 0.25 * sigmaThen * Normal()))];
        Force peak = Force.FromPoundsForce(Even(50, 70));
        SightModel Model(double v, double k) => new()
        {
            Geometry = new() { PeepToPin = Length.FromMeters(0.8), PeepHeight = Length.FromMeters(peepHeight), TapePerPinTravel = 1, Increases = ScaleDirection.Down },
            LaunchSpeed = Speed.FromMetersPerSecond(v),
            Drag = Drag.FromConstant(ReciprocalLength.FromInverseMeters(k), Air.StandardAt(Length.Zero)),
            Air = Air.StandardAt(Length.Zero),
            Gravity = Gravity.Standard,
        };
        True = Model(speed, drag);
        Known = new()
        {
            Sight = Model(speed * (1 + 0.015 * Normal()), drag * Math.Exp(0.2 * Normal())),
            PeakWeight = peak,
            ArrowMass = Mass.FromKilograms(mass),
            VirtualMass = Mass.FromKilograms(Math.Max(0.002, moving + 0.0015 * Normal())),
            SpeedSd = 0.015,
            DragSd = 0.2,
        };
    }

    internal SightModel True { get; }

    internal KnownBow Known { get; }

    internal double SigmaThen => sigmaThen;

    /// <summary>One outing.</summary>
    /// <param name="session">Its name.</param>
    /// <param name="yards">Distances.</param>
    /// <param name="count">Arrows at each.</param>
    /// <param name="sizes">Of causes; shape (14). All zero for when all was well.</param>
    /// <param name="growth">Logarithm of the growth of scatter.</param>
    /// <param name="odd">Something else: a shift in mrad for each distance, up and right.</param>
    /// <param name="sameDay">Offsets of the archer's day, when it goes on.</param>
    internal List<Shot> Shoot(string session, double[] yards, int count, double[] sizes, double growth, Func<double, (double Up, double Right)>? odd, (double Up, double Right) sameDay)
    {
        double At(CauseSize size) => sizes[(int)size];
        double sigma = sigmaThen * Math.Exp(growth), tail = At(CauseSize.TailWind), cross = At(CauseSize.CrossWind);
        List<Shot> shots = [];
        foreach (double yd in yards)
        {
            double distance = yd * Yard;
            var (angle, side) = MarkFor(yd);
            var (oddUp, oddRight) = odd?.Invoke(yd) ?? (0, 0);
            for (int i = 0; i < count; i++)
            {
                var (arrowUp, arrowRight) = arrows[i % arrows.Length];
                double wild = random.NextDouble() < 0.03 ? 3 : 1;
                double up = zeroUp + sameDay.Up + oddUp + arrowUp + wild * sigma * Skewed() + At(CauseSize.Elevation) + At(CauseSize.DayUp) + i * At(CauseSize.Fatigue);
                double right = zeroRight + side + sameDay.Right + oddRight + arrowRight + wild * sigma * Normal() + At(CauseSize.Lateral) + At(CauseSize.DayRight);
                Impact impact = Fly(distance * (1 + At(CauseSize.Distance)), angle, up, right, sizes, tail + 0.4 * Normal(), cross + 0.4 * Normal());
                shots.Add(new() { Session = session, Distance = Length.FromMeters(distance), Number = shots.Count + 1, Impact = impact });
            }
        }

        return shots;
    }

    internal (double Up, double Right) Day() => (0.25 * Normal(), 0.25 * Normal());

    /// <summary>What an instrument reads of the bow with causes at work.</summary>
    internal Reading Read(Instrument instrument, Length at, double[] sizes, bool now)
    {
        var (v, k) = Changed(sizes);
        double error = 1 + instrument.Sd * Normal(), m = mass + Forward.Grain * sizes[(int)CauseSize.ArrowMass];
        Force weight = Known.PeakWeight + Force.FromPoundsForce(sizes[(int)CauseSize.PeakWeight]);
        Speed Of(double speedThere) => Speed.FromMetersPerSecond(speedThere * error);
        return instrument.Kind switch
        {
            ReadingKind.LaunchSpeed => Reading.LaunchSpeed(Of(v), Of(v) * instrument.Sd, now),
            ReadingKind.DownrangeSpeed => Reading.DownrangeSpeed(Of(v * Math.Exp(-k * at.Meters)), Of(v) * instrument.Sd, at, now),
            ReadingKind.PeakWeight => Reading.PeakWeight(weight * error, weight * instrument.Sd, now),
            _ => Reading.ArrowMass(Mass.FromKilograms(m * error), Mass.FromKilograms(m * instrument.Sd), now),
        };
    }

    (double Speed, double Drag) Changed(double[] sizes)
    {
        double m = mass + Forward.Grain * sizes[(int)CauseSize.ArrowMass], f = 1 + sizes[(int)CauseSize.PeakWeight] / Known.PeakWeight.PoundsForce;
        return (speed * Math.Sqrt((mass + moving) / (m + moving)) * Math.Pow(f, power / 2),
            drag * Math.Exp(sizes[(int)CauseSize.Drag] + sizes[(int)CauseSize.Air]) * mass / m);
    }

    Impact Fly(double distance, double angle, double up, double right, double[] sizes, double tail, double cross)
    {
        var (v, k) = Changed(sizes);
        double m = mass + Forward.Grain * sizes[(int)CauseSize.ArrowMass];
        (double sin, double cos) = Math.SinCos(sizes[(int)CauseSize.Cant] * Math.PI / 180);
        double tilt = (angle - True.SightAngle(Length.FromYards(20)).Radians) * sizes[(int)CauseSize.SightAxis] * Math.PI / 180;
        var launch = new LaunchSi(
            v * (1 + 0.0015 * Normal()), Math.Asin(Math.Sin(angle) * cos) + 1e-3 * up, Math.Atan2(Math.Sin(angle) * sin, Math.Cos(angle)) + 1e-3 * right + tilt,
            0, -peepHeight * cos, -peepHeight * sin);
        var body = new RigidBodySi(ExampleArrow.Stability.Si, m, ExampleArrow.Inertia * m / ExampleArrow.Mass, 2.5e-7, 1.225, new(k, 9.80665, tail, 0, cross));
        RigidFlight flight = body.Start(new(launch, 0.006 * Normal(), 0.006 * Normal()), 0);
        flight.To(distance);
        return new(Length.FromMeters(flight.Here.Point.Z), Length.FromMeters(flight.Here.Point.Y));
    }

    // A mark is where the archer once put it: not quite right, and the same ever after.
    (double Angle, double Right) MarkFor(double yards)
    {
        if (!marks.TryGetValue(yards, out var mark))
        {
            mark = (True.SightAngle(Length.FromYards(yards)).Radians + 2e-4 * Normal(), 0.2 * Normal());
            marks.Add(yards, mark);
        }

        return mark;
    }

    internal double Even(double low, double high) => low + (high - low) * random.NextDouble();

    internal double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    internal bool Chance(double p) => random.NextDouble() < p;

    // Mean 0, standard deviation 1, longer to the low side: eight exponentials (gamma, shape 8; skewness −0.7).
    double Skewed()
    {
        double sum = 0;
        for (int i = 0; i < 8; i++)
        {
            sum -= Math.Log(1 - random.NextDouble());
        }

        return (8 - sum) / Math.Sqrt(8);
    }
}
