namespace Ascham.Recordings;

/// <summary>From the time between two sounds to the time of flight, in SI units, with what each input of the way of the sound is worth.</summary>
/// <remarks>
/// Heard apart = flight + delay of the exit + delay of the impact's sound + (way of the impact's sound - way of the release's sound), each way over
/// c + w cos(angle between the way of the sound and that of the arrow). To first order in w/c: a straight ray in a mean wind.
/// </remarks>
readonly struct SoundPath
{
    readonly double sound, tail;

    internal SoundPath(ShotLayout layout, SoundAir air, ArrowAtExit arrow)
    {
        (Layout, Arrow) = (layout, arrow);
        (sound, tail) = (air.SoundSi, air.TailWind.MetersPerSecond);
        (double fromBow, double fromTarget) = (sound + tail * layout.BowCosine, sound + tail * layout.TargetCosine);
        double bow = layout.ToBowSi / fromBow, target = layout.ToTargetSi / fromTarget;
        Late = target - bow;
        ByRelativeSound = -sound * (target / fromTarget - bow / fromBow);
        ByTail = -(target / fromTarget * layout.TargetCosine - bow / fromBow * layout.BowCosine);
        MicrophoneError = layout.MicrophoneErrorSi * Math.Sqrt(1 / (fromBow * fromBow) + 1 / (fromTarget * fromTarget));
        ByDistance = layout.TargetPerDistance / fromTarget;
        Constant = Late + arrow.Delay.DelaySi + arrow.TouchToSound.Seconds;
        Flown = layout.DistanceSi - arrow.LeadSi;
        if (!(Flown > 0.5))
        {
            throw new ArgumentException(
                FormattableString.Invariant($"The point stands {arrow.LeadSi:0.##} m ahead of the grip as the arrow leaves, and the face is at {layout.DistanceSi:0.##} m: nothing is left to fly."), nameof(layout));
        }
    }

    internal ShotLayout Layout { get; }

    internal ArrowAtExit Arrow { get; }

    /// <summary>By how much longer the sound of the impact is on its way than that of the release, s.</summary>
    internal double Late { get; }

    /// <summary>What the heard time has beside the time of flight, s.</summary>
    internal double Constant { get; }

    /// <summary>Way of the point from exit to face, m.</summary>
    internal double Flown { get; }

    /// <summary>Change of <see cref="Late"/> by the speed of sound in proportion, s.</summary>
    internal double ByRelativeSound { get; }

    /// <summary>Change of <see cref="Late"/> by the tail wind, s per m/s.</summary>
    internal double ByTail { get; }

    /// <summary>Change of <see cref="Late"/> by the distance to the target, s per m.</summary>
    internal double ByDistance { get; }

    /// <summary>Standard error of <see cref="Late"/> from the place of the microphone, s.</summary>
    internal double MicrophoneError { get; }

    /// <summary>Between which times the sounds can be apart: the span of speeds, and three standard errors of the delays about it.</summary>
    internal (double Least, double Greatest) Window(SpeedSpan speeds)
    {
        double slack = 0.005 + 3 * Math.Sqrt(Arrow.Delay.ErrorSi * Arrow.Delay.ErrorSi + MicrophoneError * MicrophoneError);
        return (Math.Max(0.02, Flown / speeds.Fastest.MetersPerSecond + Constant - slack), Flown / speeds.Slowest.MetersPerSecond + Constant + slack);
    }
}
