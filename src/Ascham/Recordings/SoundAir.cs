namespace Ascham.Recordings;

using Ascham.Air;
using Ascham.Quantities;
using UnitsNet;

/// <summary>The air that carried arrow and sound, and how well it is known.</summary>
public sealed record SoundAir
{
    // The ratio of specific heats of moist air: within 0.2 % in the speed of sound (see Air); even over that range, 0.2 %/sqrt(3).
    const double ModelError = 0.0012;

    /// <summary>The air; its temperature gives the speed of sound, 0.17 % a kelvin.</summary>
    public required Air Air
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(Air));
            field = value;
        }
    }

    /// <summary>Standard error of the temperature; zero or more.</summary>
    public required TemperatureDelta TemperatureError
    {
        get;
        init
        {
            Require.NotNegative(value.Kelvins, "K", nameof(TemperatureError));
            field = value;
        }
    }

    /// <summary>Mean wind along the range, tail wind positive; -20 to 20 m/s. It carries the sound as well as the arrow.</summary>
    public required Speed TailWind
    {
        get;
        init
        {
            Require.InRange(value.MetersPerSecond, -20, 20, "m/s", nameof(TailWind));
            field = value;
        }
    }

    /// <summary>Its standard error; zero or more.</summary>
    public required Speed TailWindError
    {
        get;
        init
        {
            Require.NotNegative(value.MetersPerSecond, "m/s", nameof(TailWindError));
            field = value;
        }
    }

    /// <summary>Speed of sound in still air.</summary>
    internal double SoundSi => Air.SpeedOfSound.MetersPerSecond;

    /// <summary>Its relative standard error: half that of the absolute temperature, and that of the model.</summary>
    internal double SoundErrorShare => Math.Sqrt(ModelError * ModelError + Math.Pow(TemperatureError.Kelvins / (2 * Air.Temperature.Kelvins), 2));
}
