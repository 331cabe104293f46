namespace Ascham.Tests.RecordingsTests;

using Ascham.Quantities;
using Ascham.Recordings;
using UnitsNet;

/// <summary>What troubles a synthesised recording.</summary>
enum Trouble
{
    None,
    Wind,
    Echo,
    SecondArcher,
    Clipping,
}

/// <summary>One invented shot and its recording: what is stated, what is true, what is heard.</summary>
/// <remarks>Truth is drawn about the stated values with the stated errors. Times of flight and of sound are worked out here, in closed form, without the library.</remarks>
sealed class SynthesisedShot
{
    const double Yard = 0.9144;

    internal static readonly ArrowAtExit Arrow = new()
    {
        NockToTip = 0.75.Metres,
        BraceHeight = 0.17.Metres,
        LeadError = 0.02.Metres,
        Delay = ExitDelay.AtTheBlow,
        TouchToSound = Duration.FromMilliseconds(0.5),
        TouchToSoundError = Duration.FromMilliseconds(0.5),
    };

    internal required Trouble Trouble { get; init; }

    internal required ShotLayout Layout { get; init; }

    /// <summary>A fifth down and a quarter up from what the archer believes, who is right to 5 %.</summary>
    internal required SpeedSpan Speeds { get; init; }

    internal required SoundAir Air { get; init; }

    internal required Recording Recording { get; init; }

    internal required double HeardRelease { get; init; }

    internal required double HeardImpact { get; init; }

    internal required double MeanSpeed { get; init; }

    internal required double LaunchSpeed { get; init; }

    internal required double DragConstant { get; init; }

    internal static SynthesisedShot Make(Trouble trouble, int seed, double? yards = null, (double Speed, double Drag, double Delay)? bow = null)
    {
        var painter = new SoundPainter(seed % 2 == 0 ? 44100 : 48000, 3, seed);
        double nominal = (yards ?? new[] { 20, 30, 40, 50, 60 }[(int)painter.Even(0, 5)]) * Yard, trueDistance = nominal + painter.Normal(0.05);
        double behind = painter.Even(0, 3), aside = painter.Even(1, 4); // of the microphone, behind and beside the archer
        double celsius = painter.Even(-5, 32), tail = painter.Even(-3, 3), delay = bow?.Delay ?? painter.Normal(0.002), late = 0.0005 + painter.Normal(0.0005);
        double speed = bow?.Speed ?? painter.Even(60, 95), k = bow?.Drag ?? painter.Even(0.0008, 0.0022), trueTail = tail + painter.Normal(1);
        double c = Sound(celsius + painter.Normal(1.5)), flown = trueDistance - (0.75 - 0.17) - painter.Normal(0.02), time = Flight(flown, speed, k, trueTail);
        double toBow = Carried(behind, aside, c, trueTail), toTarget = Carried(behind + trueDistance, aside, c, trueTail), exit = painter.Even(0.9, 1.1), believed = flown / time * (1 + painter.Normal(0.05));
        (double release, double impact) = (exit - delay + toBow, exit + time + late + toTarget);

        double gain = painter.Even(0.3, 0.9), reverberation = painter.Even(0, 0.15), bowMetres = Math.Sqrt((behind * behind) + (aside * aside)), targetMetres = behind + nominal;
        float[] blow = painter.Strike(180, 3500, painter.Even(0.1, 0.8), painter.Even(4, 15), painter.Even(0.2, 1)), thud = painter.Strike(90, painter.Even(600, 2500), painter.Even(0.2, 1), painter.Even(5, 15), painter.Even(0.3, 1));
        double thudSize = SoundPainter.Amplitude(painter.Even(-6, 8)), stroke = Math.PI / 2 * 0.5 / speed;
        painter.Put(painter.Slide(stroke), release - stroke, gain * SoundPainter.Amplitude(painter.Even(-40, -18)) / bowMetres);
        painter.Put(painter.Strike(1000, 5000, 0.1, 2, 0.5), release - stroke, gain * SoundPainter.Amplitude(painter.Even(-45, -12)) / bowMetres);
        painter.PutWithSurroundings(blow, release, gain / bowMetres, reverberation);
        float[] far = SoundPainter.Dulled(thud, 0.7);
        painter.PutWithSurroundings(far, impact, gain * thudSize / targetMetres, reverberation);
        if (painter.Chance(0.1))
        {
            painter.PutWithSurroundings(painter.Strike(100, 2000, 1, 10, 0.5), painter.Even(0.2, 2.8), gain * SoundPainter.Amplitude(painter.Even(-40, -15)), reverberation); // somebody puts something down
        }

        double noise = painter.Even(-75, -42), cut = 1;
        switch (trouble)
        {
            case Trouble.Wind:
                painter.Wind(SoundPainter.Amplitude(painter.Even(-60, -22)));
                noise += painter.Even(0, 12); // leaves
                break;
            case Trouble.Echo:
                double after = painter.Even(0.03, 0.4), size = SoundPainter.Amplitude(painter.Even(-20, -4)), dull = painter.Even(0.3, 0.9);
                painter.PutWithSurroundings(SoundPainter.Dulled(blow, dull), release + after, size * gain / bowMetres, reverberation);
                painter.PutWithSurroundings(SoundPainter.Dulled(far, dull), impact + (after * painter.Even(0.3, 1)), size * gain * thudSize / targetMetres, reverberation);
                break;
            case Trouble.SecondArcher:
                double other = exit + painter.Even(-0.9, 1), side = aside + painter.Even(-1, 10), flies = Flight(flown, painter.Even(50, 95), k, trueTail);
                painter.PutWithSurroundings(painter.Strike(180, 3500, painter.Even(0.1, 0.8), painter.Even(4, 15), painter.Even(0.2, 1)), other + Carried(behind, side, c, trueTail), gain * SoundPainter.Amplitude(painter.Even(-6, 6)) / Math.Sqrt((behind * behind) + (side * side) + 0.5), reverberation);
                painter.PutWithSurroundings(painter.Strike(90, 1500, painter.Even(0.2, 1), painter.Even(5, 15), painter.Even(0.3, 1)), other + flies + Carried(behind + nominal, side, c, trueTail), gain * SoundPainter.Amplitude(painter.Even(-6, 8)) / targetMetres, reverberation);
                break;
            case Trouble.Clipping:
                cut = painter.Even(2, 30);
                break;
            default:
                break;
        }

        painter.Pink(SoundPainter.Amplitude(noise));
        return new()
        {
            Trouble = trouble,
            Layout = ShotLayout.WithMicrophone(nominal.Metres, 0.05.Metres, behind.Metres, aside.Metres, 0.05.Metres),
            Air = new() { Air = Ascham.Air.Air.Moist(celsius.Celsius, 1013.Hectopascals, 50.Percent), TemperatureError = TemperatureDelta.FromKelvins(1.5), TailWind = tail.MetresPerSecond, TailWindError = 1.MetresPerSecond },
            Recording = Recording.FromSamples(painter.Recorded(cut), Frequency.FromHertz(painter.Rate)),
            Speeds = new((0.8 * believed).MetresPerSecond, (1.25 * believed).MetresPerSecond),
            HeardRelease = release,
            HeardImpact = impact,
            MeanSpeed = flown / time,
            LaunchSpeed = speed,
            DragConstant = k,
        };
    }

    // 331.3 m/s in dry air at 0 °C, as in textbooks, and faster by 0.16 of the share of vapour: D. A. Bohn, J. Audio Eng. Soc. 36 (1988) 223-231, from memory. Half saturated, at 1013 hPa.
    static double Sound(double celsius) => 331.3 * Math.Sqrt(1 + (celsius / 273.15)) * (1 + (0.16 * 0.5 * 6.112 * Math.Exp(17.62 * celsius / (243.12 + celsius)) / 1013));

    /// <summary>Time of a level shot: quadratic drag through air that moves along, and the arc that is longer than its chord.</summary>
    internal static double Flight(double metres, double speed, double k, double tail)
    {
        double arc = 1 + (Math.Pow(9.80665 * metres / (speed * speed), 2) / 24), time = metres / speed;
        for (int i = 0; i < 50; i++)
        {
            time = (Math.Exp(k * ((metres * arc) - (tail * time))) - 1) / (k * (speed - tail));
        }

        return time;
    }

    /// <summary>Time of sound to a microphone so far behind and aside of its source, in air that moves downrange: exact, |way - wind t| = c t.</summary>
    static double Carried(double behind, double aside, double c, double tail)
    {
        double b = behind * tail, square = (behind * behind) + (aside * aside), a = (c * c) - (tail * tail);
        return (b + Math.Sqrt((b * b) + (a * square))) / a;
    }
}
