namespace Ascham.Tests.RecordingsTests;

using Ascham.Quantities;
using Ascham.Recordings;
using UnitsNet;
using Xunit;

public class ListeningTests
{
    const int Rate = 48000;

    // Sound takes 112 ms longer from the target than from the bow, and 39.42 m at 80 m/s take 493 ms: 605 ms, and 0.5 ms for the target to answer.
    const double Release = 0.8, Impact = Release + 0.605;

    static readonly ShotLayout Layout = ShotLayout.WithMicrophone(40.Metres, 0.05.Metres, 0.Metres, 2.Metres, 0.05.Metres);

    static readonly SoundAir Air = new()
    {
        Air = Ascham.Air.Air.Moist(15.Celsius, 1013.Hectopascals, 50.Percent),
        TemperatureError = TemperatureDelta.FromKelvins(2),
        TailWind = 0.MetresPerSecond,
        TailWindError = 1.MetresPerSecond,
    };

    [Fact]
    public void A_plain_shot_is_heard_and_its_picture_drawn()
    {
        Listening heard = Listen((Release, 0.5), (Impact, 0.05));

        Assert.Null(heard.Unclear);
        Assert.Equal(605, heard.Shot!.Apart.Milliseconds, 0.3);
        Assert.InRange(heard.Shot.ApartError.Milliseconds, 0.1, 0.3);
        Assert.Same(Layout, heard.Shot.Layout);
        Assert.Contains("605.", heard.Why, StringComparison.Ordinal);
        SoundTrace trace = heard.Trace;
        Assert.Equal([SoundRole.Release, SoundRole.Impact], trace.Onsets.Select(o => o.Role));
        Assert.Equal(2000, trace.Times.Count);
        Assert.Equal(trace.Times.Count, trace.Levels.Count);
        Assert.Equal(trace.Times.Count, trace.Thresholds.Count);
        Assert.True(trace.Levels[802].Decibels > trace.Thresholds[802].Decibels && trace.Levels[700].Decibels < trace.Thresholds[700].Decibels);
        Assert.True(trace.Window.Least < heard.Shot.Apart && heard.Shot.Apart < trace.Window.Greatest);
        double mean = SpeedFromSound.Mean([heard.Shot], Air, SynthesisedShot.Arrow, 0.MetresPerSecond, 0.9).Value.MetersPerSecond;
        Assert.Equal(80, mean, 0.3);
    }

    [Fact]
    public void Each_kind_of_unclear_recording_is_refused_with_its_reason()
    {
        Refused(UnclearReason.NothingHeard, "Nothing sudden");
        Refused(UnclearReason.NoPair, "Was the impact heard", (Release, 0.5));
        Refused(UnclearReason.NoPair, "Was the impact heard", (Release, 0.5), (Release + 0.2, 0.05));
        Refused(UnclearReason.SeveralPairs, "2 pairs", (Release, 0.5), (Impact, 0.05), (Impact + 0.05, 0.06));
        Refused(UnclearReason.SeveralPairs, "4 pairs", (Release, 0.5), (Release - 0.1, 0.45), (Impact, 0.05), (Impact - 0.08, 0.05));
        Refused(UnclearReason.TooLoud, "Somebody else's bow?", (Release, 0.5), (Impact, 0.45));
        Refused(UnclearReason.TooFaint, "stands only.*never put it ahead of the shooting line", (Release, 0.5), (Impact, 0.007));
        Refused(UnclearReason.AnotherBow, "another archer's shot", (Release, 0.5), (Release - 0.3, 0.1), (Impact, 0.05));
        Refused(UnclearReason.AnotherBow, "another archer's shot", (Release, 0.5), (Impact, 0.05), (Impact + 0.2, 0.4));
        Refused(UnclearReason.AnotherBow, "another archer's shot", (Release - 0.6, 0.5), (Impact - 0.6, 0.05), (Impact + 0.3, 0.04));
        Refused(UnclearReason.DoubleStart, "starts twice", (Release, 0.5), (Release + 0.015, 0.45), (Impact, 0.05));
        Refused(UnclearReason.Restless, "by chance", [(Release, 0.5), (Impact, 0.02), .. Enumerable.Range(0, 8).Select(i => (0.1 + (0.04 * i), 0.02))]);
        static void Refused(UnclearReason reason, string said, params (double At, double Size)[] sounds)
        {
            Listening heard = Listen(sounds);
            Assert.Null(heard.Shot);
            Assert.True(heard.Unclear == reason, $"{reason} expected, {heard.Unclear} given: {heard.Why}");
            Assert.Matches(said, heard.Why);
            Assert.NotEmpty(heard.Trace.Levels);
            Assert.DoesNotContain(heard.Trace.Onsets, o => o.Role is SoundRole.Release or SoundRole.Impact);
        }
    }

    [Fact]
    public void A_microphone_ahead_of_the_bow_is_spoken_of_whatever_was_heard()
    {
        var layout = ShotLayout.WithMicrophone(40.Metres, 0.05.Metres, (-10).Metres, 5.Metres, 0.05.Metres);
        Assert.EndsWith(layout.Caution!, Listening.To(Recording.FromSamples(Paint((Release, 0.5)), Frequency.FromHertz(Rate)), layout, Air, SynthesisedShot.Arrow, new SpeedSpan(65.MetresPerSecond, 100.MetresPerSecond)).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_short_and_clipped_recordings_are_refused()
    {
        float[] sound = Paint((Release, 0.5), (Impact, 0.05));
        Assert.Equal(UnclearReason.TooShort, Listen(sound[..(Rate / 2)]).Unclear);
        for (int i = 0; i < sound.Length / 10; i++)
        {
            sound[i] = 1;
        }

        Assert.Equal(UnclearReason.Clipped, Listen(sound).Unclear);
    }

    [Fact] // an echo in the window of the impact has the release's wave form, another sound has not
    public void An_echo_is_known_by_its_wave_form()
    {
        float[] sound = Paint((Release, 0.5), (Impact, 0.05));
        int late = (int)(0.49 * Rate), from = (int)((Release - 0.001) * Rate);
        for (int i = from; i < from + (Rate / 20); i++)
        {
            sound[i + late] += 0.1f * sound[i];
        }

        Listening heard = Listen(sound);
        Assert.True(heard.Unclear is null, heard.Why);
        Assert.Equal([SoundRole.Release, SoundRole.Echo, SoundRole.Impact], heard.Trace.Onsets.Select(o => o.Role));
        Assert.Equal(UnclearReason.SeveralPairs, Listen((Release, 0.5), (Release + 0.5, 0.05), (Impact, 0.05)).Unclear);
    }

    [Theory] // relation: louder or softer, earlier or later, at another rate, the time is the same
    [InlineData(0.1, 0, 48000)]
    [InlineData(1, 0.123, 48000)]
    [InlineData(1, 0, 96000)]
    [InlineData(1, 0, 44100)]
    public void Gain_start_and_sample_rate_do_not_move_the_time(double gain, double later, int rate)
    {
        Listening heard = Listen([.. Paint(rate, (Release + later, 0.5), (Impact + later, 0.05)).Select(s => (float)(s * gain))], rate);
        Assert.True(heard.Unclear is null, heard.Why);
        Assert.Equal(605, heard.Shot!.Apart.Milliseconds, 0.3);
    }

    [Fact] // a faint slide and click before the blow do not pull its onset
    public void The_blow_is_timed_and_not_the_letting_go()
    {
        Listening heard = Listen((Release - 0.011, 0.04), (Release, 0.5), (Impact, 0.05));
        Assert.True(heard.Unclear is null, heard.Why);
        Assert.Equal(605, heard.Shot!.Apart.Milliseconds, 0.3);
    }

    static Listening Listen(params (double At, double Size)[] sounds) => Listen(Paint(sounds));

    static Listening Listen(float[] sound, int rate = Rate) => Listening.To(
        Recording.FromSamples(sound, Frequency.FromHertz(rate)), Layout, Air, SynthesisedShot.Arrow, new SpeedSpan(65.MetresPerSecond, 100.MetresPerSecond));

    static float[] Paint(params (double At, double Size)[] sounds) => Paint(Rate, sounds);

    /// <summary>Two seconds of hiss with bursts that die away in 4 ms.</summary>
    static float[] Paint(int rate, params (double At, double Size)[] sounds)
    {
        var random = new Random(3);
        float[] sound = [.. Enumerable.Range(0, 2 * rate).Select(_ => (float)(0.002 * ((2 * random.NextDouble()) - 1)))];
        foreach ((double at, double size) in sounds)
        {
            for (int i = (int)Math.Ceiling(at * rate); i < (at + 0.04) * rate; i++)
            {
                sound[i] += (float)(size * Math.Exp(-((i / (double)rate) - at) / 0.004) * ((2 * random.NextDouble()) - 1));
            }
        }

        return sound;
    }
}
