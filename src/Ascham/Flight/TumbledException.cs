namespace Ascham.Flight;

using System.Globalization;
using UnitsNet;

/// <summary>The arrow turned so far from its path that the model of its flight no longer means anything.</summary>
public sealed class TumbledException : Exception
{
    internal TumbledException(Length distance, Angle attack, Length margin)
        : base(Text(distance, attack, margin)) => (Distance, Attack, Margin) = (distance, attack, margin);

    /// <summary>How far the arrow had come along the line of sight.</summary>
    public Length Distance { get; }

    /// <summary>Angle of attack there, above 30°.</summary>
    public Angle Attack { get; }

    /// <summary>Centre of pressure behind the balance point; negative when ahead of it.</summary>
    public Length Margin { get; }

    static string Text(Length distance, Angle attack, Length margin)
    {
        string cause = margin > Length.Zero
            ? "Its centre of pressure lies {2:0.#} cm behind the balance point, so it is stable at small angles: reduce the pitch, yaw or their rates at the launch."
            : "Its centre of pressure lies {2:0.#} cm ahead of the balance point, so nothing holds it straight: larger or more vanes, or more weight in front, would.";
        return string.Format(CultureInfo.InvariantCulture, "At {0:0.##} m the arrow stood at {1:0.#}° to its path and counts as tumbled. " + cause,
            distance.Meters, attack.Degrees, Math.Abs(margin.Centimeters));
    }
}
