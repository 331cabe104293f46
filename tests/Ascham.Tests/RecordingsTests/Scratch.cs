namespace Ascham.Tests.RecordingsTests;

using Xunit;

public class Scratch
{
    [Fact(Explicit = true)]
    public void Look()
    {
        if (Environment.GetEnvironmentVariable("ONE") is { } one)
        {
            string[] a = one.Split(',');
            foreach (string seed in a[1..])
            {
            var shot = SynthesisedShot.Make(Enum.Parse<Trouble>(a[0]), int.Parse(seed));
            var l = Ascham.Recordings.Listening.To(shot.Recording, shot.Layout, shot.Air, SynthesisedShot.Arrow, shot.Speeds);
            using var f = new StreamWriter("/tmp/recording/one.txt", true);
            f.WriteLine($"{one} {seed} truth {shot.HeardRelease:F4} {shot.HeardImpact:F4} window {l.Trace.Window} clipped {l.Trace.Clipped}: {l.Why}");
            foreach (var e in l.Trace.Onsets) f.WriteLine($"   {e.Time.Seconds:F4} +- {e.TimeError.Milliseconds:F2} ms {e.Level.Decibels:F1} dB above {e.AboveNoise.Decibels:F1} twice {e.IsDouble} {e.Role}");
            f.WriteLine("   median level " + l.Trace.Levels.Select(x => x.Decibels).Order().ElementAt(l.Trace.Levels.Count / 2));
            }
            return;
        }
        var watch = System.Diagnostics.Stopwatch.StartNew();
        using var o = new StreamWriter("/tmp/recording/look.txt");
        foreach (var t in Enum.GetValues<Trouble>())
        {
            var s = RecordingStudy.Run(t, 100, 50_000);
            var taken = s.Taken.ToArray();
            var right = taken.Where(h => !h.Wrong).Select(h => h.TimingError * 1000).Order().ToArray();
            o.WriteLine("   wrong seeds " + string.Join(",", s.All.Select((h, i) => (h, i)).Where(x => x.h.Wrong).Select(x => 50_000 + x.i)) + " double " + string.Join(",", s.All.Select((h, i) => (h, i)).Where(x => x.h.Unclear == Ascham.Recordings.UnclearReason.DoubleStart).Take(6).Select(x => 50_000 + x.i)));
            o.WriteLine($"{t}: taken {taken.Length} wrong {s.Wrong} held {s.Held} | " + string.Join(", ", s.All.Where(h => !h.Taken).GroupBy(h => h.Unclear).Select(g => $"{g.Key} {g.Count()}")));
            if (right.Length > 0)
            {
                var z = taken.Where(h => !h.Wrong).Select(h => h.TimingError / h.Stated).ToArray();
                o.WriteLine($"   err ms: min {right[0]:F2} p10 {right[right.Length / 10]:F2} med {right[right.Length / 2]:F2} p90 {right[right.Length * 9 / 10]:F2} max {right[^1]:F2}; stated med {taken.Select(h => h.Stated * 1000).Order().ElementAt(taken.Length / 2):F2}; rms z {Math.Sqrt(z.Average(x => x * x)):F2}; half {taken.Average(h => h.HalfWidth):P2}");
            }
        }

        o.WriteLine($"{watch.Elapsed.TotalSeconds:F1} s");
    }
}
