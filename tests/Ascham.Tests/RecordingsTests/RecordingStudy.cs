namespace Ascham.Tests.RecordingsTests;

using Ascham.Quantities;
using Ascham.Recordings;

/// <summary>What became of a row of synthesised recordings.</summary>
sealed record RecordingStudy(Trouble? Trouble, IReadOnlyList<Heard> All)
{
    internal const double Confidence = 0.90;

    internal IEnumerable<Heard> Taken => All.Where(h => h.Taken);

    internal int Wrong => All.Count(h => h.Wrong);

    /// <summary>Numbers of the wrong ones, to look at.</summary>
    internal IEnumerable<int> WrongOnes => All.Index().Where(h => h.Item.Wrong).Select(h => h.Index);

    internal int Held => All.Count(h => h.Holds);

    internal static RecordingStudy Run(Trouble trouble, int count, int seed) =>
        new(trouble, [.. Enumerable.Range(seed, count).AsParallel().AsOrdered().Select(s => Heard.Of(SynthesisedShot.Make(trouble, s)))]);
}

/// <summary>One recording: refused, or taken with its errors.</summary>
/// <param name="Unclear">Why refused.</param>
/// <param name="TimingError">Heard less true time between the sounds, s.</param>
/// <param name="Stated">Standard error stated for it, s.</param>
/// <param name="Holds">Whether the interval of the mean speed holds the truth.</param>
/// <param name="HalfWidth">Of that interval, relative.</param>
/// <param name="Wrong">Taken, and a wrong sound: off by more than 10 ms.</param>
sealed record Heard(UnclearReason? Unclear, double TimingError, double Stated, bool Holds, double HalfWidth, bool Wrong)
{
    internal bool Taken => Unclear is null;

    internal static Heard Of(SynthesisedShot shot)
    {
        Listening heard = Listening.To(shot.Recording, shot.Layout, shot.Air, SynthesisedShot.Arrow, shot.Speeds);
        if (heard.Shot is not { } timed)
        {
            return new(heard.Unclear, 0, 0, false, 0, false);
        }

        var speed = SpeedFromSound.Mean([timed], shot.Air, SynthesisedShot.Arrow, 0.MetresPerSecond, RecordingStudy.Confidence);
        double off = timed.Apart.Seconds - (shot.HeardImpact - shot.HeardRelease);
        bool holds = speed.Low.MetersPerSecond <= shot.MeanSpeed && shot.MeanSpeed <= speed.High.MetersPerSecond;
        return new(null, off, timed.ApartError.Seconds, holds, (speed.High - speed.Low) / 2 / speed.Value, Math.Abs(off) > 0.010);
    }
}
