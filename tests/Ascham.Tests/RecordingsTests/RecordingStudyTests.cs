namespace Ascham.Tests.RecordingsTests;

using Xunit;

public class RecordingStudyTests
{
    [Fact] // coverage: 500 recordings with wind, echo, a second archer and clipping
    public void Speeds_of_five_hundred_recordings_lie_in_their_intervals_or_are_refused()
    {
        RecordingStudy[] five = [.. RecordingStudyPage.Five];
        int taken = five.Sum(s => s.Taken.Count()), held = five.Sum(s => s.Held), wrong = five.Sum(s => s.Wrong);
        RecordingStudy alone = five.Single(s => s.Trouble == Trouble.None);
        double allowed = 4 * Math.Sqrt(0.9 * 0.1 / taken);

        Assert.InRange(held / (double)taken, 0.9 - allowed, 1);
        Assert.True(wrong <= 5, string.Join("; ", five.Select(s => $"{s.Trouble}: {string.Join(", ", s.WrongOnes)}"))); // 1 % of all recordings
        Assert.InRange(alone.Taken.Count(), 60, 100); // a listener who refuses all is right and of no use
        Assert.InRange(alone.Taken.Average(h => h.HalfWidth), 0, 0.0125); // nearer targets than 60 yd, and colder guesses
    }

    [Fact(Explicit = true)]
    public void Rewrite_the_page() => RecordingStudyPage.Write();
}
