namespace Ascham.Flight;

using Ascham.Numerics;

/// <summary>Sums over the arrows that reached one face, about the strike of the arrow without differences, which keeps them free of cancellation.</summary>
struct FaceSums
{
    internal double Arrived, Right, Up, RightRight, UpUp, RightUp, Time, TimeTime, Speed, SpeedSpeed, Within;

    /// <summary>Adds a chunk.</summary>
    /// <param name="chunk">Just flown.</param>
    /// <param name="face">Which face of it.</param>
    /// <param name="about">The strike that the sums are about.</param>
    /// <param name="radius">Of the circle about the aim point, m.</param>
    internal void Add(BatchChunk chunk, int face, in Strike<double> about, double radius)
    {
        ReadOnlySpan<double> rights = chunk.Right(face), ups = chunk.Up(face), times = chunk.Time(face), speeds = chunk.Speed(face);
        Lanes arrived = default, right = default, up = default, rightRight = default, upUp = default, rightUp = default;
        Lanes time = default, timeTime = default, speed = default, speedSpeed = default, within = default;
        for (int i = 0; i < BatchChunk.Arrows; i += Lanes.Count)
        {
            Lanes x = Lanes.From(rights[i..]), y = Lanes.From(ups[i..]);
            within += Lanes.Of(1).WhereAtMost(Lanes.MultiplyAdd(x, x, y * y), Lanes.Of(radius * radius));
            arrived += Lanes.Of(1).Where(x);
            Lanes dx = (x - Lanes.Of(about.Right)).Where(x), dy = (y - Lanes.Of(about.Up)).Where(x);
            Lanes dt = (Lanes.From(times[i..]) - Lanes.Of(about.Time)).Where(x), dv = (Lanes.From(speeds[i..]) - Lanes.Of(about.Speed)).Where(x);
            right += dx;
            up += dy;
            time += dt;
            speed += dv;
            rightRight = Lanes.MultiplyAdd(dx, dx, rightRight);
            upUp = Lanes.MultiplyAdd(dy, dy, upUp);
            rightUp = Lanes.MultiplyAdd(dx, dy, rightUp);
            timeTime = Lanes.MultiplyAdd(dt, dt, timeTime);
            speedSpeed = Lanes.MultiplyAdd(dv, dv, speedSpeed);
        }

        Add(new()
        {
            Arrived = arrived.Sum, Right = right.Sum, Up = up.Sum, RightRight = rightRight.Sum, UpUp = upUp.Sum, RightUp = rightUp.Sum,
            Time = time.Sum, TimeTime = timeTime.Sum, Speed = speed.Sum, SpeedSpeed = speedSpeed.Sum, Within = within.Sum,
        });
    }

    /// <summary>Adds other sums about the same strike.</summary>
    internal void Add(in FaceSums other)
    {
        Arrived += other.Arrived;
        Right += other.Right;
        Up += other.Up;
        RightRight += other.RightRight;
        UpUp += other.UpUp;
        RightUp += other.RightUp;
        Time += other.Time;
        TimeTime += other.TimeTime;
        Speed += other.Speed;
        SpeedSpeed += other.SpeedSpeed;
        Within += other.Within;
    }
}
