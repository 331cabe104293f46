namespace Ascham.Sights;

using System.Globalization;
using Ascham.Quantities;
using UnitsNet;

/// <summary>One distance of a fixed-setting test: where the arrows are expected, and whether that is wise.</summary>
/// <param name="Distance">Distance to the butt.</param>
/// <param name="Expected">Expected height of the group's centre above the aim point; negative when low.</param>
/// <param name="Warning">What speaks against shooting it; <see langword="null"/> when nothing does.</param>
public sealed record PlannedDrop(Length Distance, Length Expected, string? Warning);

/// <summary>Plans a tape test with one sight setting: leave the sight at the shortest mark and measure the drops.</summary>
/// <remarks>
/// Only short drops are asked for: the arrow must strike the butt. Range rules and a safe backstop come before any plan.
/// </remarks>
public static class FixedSettingPlan
{
    /// <summary>Drops beyond this are not asked for. // common practice, no source: a butt is about 1.3 m high</summary>
    public static readonly Length LongestDrop = Length.FromMeters(1);

    /// <summary>Works out where arrows will strike with the sight left at one distance, and warns of those that would leave the butt.</summary>
    /// <param name="model">The bow and its sight.</param>
    /// <param name="setFor">The distance the sight is set for.</param>
    /// <param name="markError">How far that mark is out, from the printed to the right one, where measured; the sight then stands at the printed one.</param>
    /// <param name="distances">Distances to shoot from.</param>
    /// <param name="below">Butt below the aim point; positive; <see langword="null"/> when not known.</param>
    /// <param name="above">Butt above the aim point; positive; <see langword="null"/> when not known.</param>
    /// <param name="spread">Height that arrows may stray from the expected centre, per distance; three standard deviations are sensible.</param>
    /// <returns>One entry per distance, in the order given.</returns>
    public static IReadOnlyList<PlannedDrop> Of(SightModel model, Length setFor, Estimate<Length>? markError, IEnumerable<Length> distances, Length? below, Length? above, Angle spread)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(distances);
        Require.NotNegative(spread.Radians, "rad");
        var pin = model.PinBelowPeep(setFor) - (markError is null ? Length.Zero : model.PinTravel(markError.Value));
        double unsure = markError is null ? 0 : Math.Abs(model.PinTravel(markError.High - markError.Low) / model.Geometry.PeepToPin) / 2;
        return [.. distances.Select(d => Plan(d, model.HeightWithPinAt(pin, d), below, above, Angle.FromRadians(spread.Radians + unsure), atSetting: d <= setFor))];
    }

    static PlannedDrop Plan(Length distance, Length expected, Length? below, Length? above, Angle spread, bool atSetting)
    {
        var stray = distance * spread.Radians;
        string? warning =
            below is { } low && expected - stray < -low ? $"some arrows would pass under the butt ({Text(low)} below the aim)"
            : above is { } high && expected + stray > high ? $"some arrows would pass over the butt ({Text(high)} above the aim)"
            : below is null && !atSetting ? "the butt's lower edge is not in the setup: whether arrows stay on the butt cannot be told"
            : expected < -LongestDrop ? $"a drop of {Text(-expected)} is more than this test needs; come closer or set the sight"
            : null;
        return new(distance, expected, warning);
    }

    static string Text(Length length) => string.Create(CultureInfo.InvariantCulture, $"{length.Centimeters:0} cm");
}
