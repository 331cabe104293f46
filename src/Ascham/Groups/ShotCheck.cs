namespace Ascham.Groups;

using Ascham.Quantities;
using UnitsNet;

/// <summary>What every list of shots must satisfy before anything is counted.</summary>
static class ShotCheck
{
    /// <summary>Returns the shots as an array after checking each.</summary>
    internal static Shot[] Checked(IEnumerable<Shot> shots, string name)
    {
        ArgumentNullException.ThrowIfNull(shots, name);
        Shot[] all = [.. shots];
        if (all.Length == 0)
        {
            throw new ArgumentException($"{name} must hold at least one shot; it was empty.", name);
        }

        foreach (Shot shot in all)
        {
            Check(shot, name);
        }

        return all;
    }

    /// <summary>Whether two lengths are the same record, written perhaps in different units.</summary>
    /// <remarks>A tenth of a micrometre is far above rounding between units and far below any setting of a sight.</remarks>
    internal static bool Same(Length a, Length b) => Math.Abs(a.Meters - b.Meters) < 1e-7;

    /// <summary>Whether two optional lengths are the same record; none equals none only.</summary>
    internal static bool Same(Length? a, Length? b) => a is { } x && b is { } y ? Same(x, y) : a is null && b is null;

    static void Check(Shot shot, string name)
    {
        if (shot is null)
        {
            throw new ArgumentException($"{name} must not hold null.", name);
        }

        if (shot.Impact is null == shot.Missed is null)
        {
            string both = shot.Impact is null ? "neither" : "both";
            throw new ArgumentException($"Shot {shot.Number} of session {shot.Session} must have either an impact or a miss; it had {both}.", name);
        }

        Require.Positive(shot.Distance.Meters, "m", $"distance of shot {shot.Number}");
    }
}
