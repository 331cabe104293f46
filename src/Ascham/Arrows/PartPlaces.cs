namespace Ascham.Arrows;

using UnitsNet;
using UnitsNet.Units;

/// <summary>Where parts may sit: not two in one place, and none off the shaft.</summary>
static class PartPlaces
{
    const double Slack = 1e-4;   // m; parts that touch may be typed with rounded figures
    const double Ahead = 0.10;   // m; how far the centre of a point may lie ahead of what it sits on: longer than any broadhead (common practice, no source)
    const double Behind = 0.03;  // m; how far a nock may reach behind the shaft or the slot (common practice, no source)

    /// <exception cref="ArgumentException">Something is not where it can be.</exception>
    internal static void Check(IReadOnlyList<ArrowPart> parts)
    {
        if (Fault(parts) is { } fault)
        {
            throw new ArgumentException(fault.Problem, nameof(parts));
        }
    }

    /// <summary>What is wrong with a list of parts, in whole sentences, and with which of them; <see langword="null"/> when nothing is.</summary>
    internal static (string Problem, ArrowPart? Culprit)? Fault(IReadOnlyList<ArrowPart> parts)
    {
        if (Lacking(parts, PartKind.Shaft) is { } noShaft)
        {
            return noShaft;
        }

        if (Lacking(parts, PartKind.Point) is { } noPoint)
        {
            return noPoint;
        }

        ArrowPart shaft = parts.Single(p => p.Kind == PartKind.Shaft), point = parts.Single(p => p.Kind == PartKind.Point);
        if (!(shaft.Length.Meters > 0 && shaft.MassSi > 0))
        {
            return ("The shaft must have a length and a mass above zero: measure the bare shaft and weigh it.", shaft);
        }

        return parts.Select(p => Misplaced(p, shaft, point)).FirstOrDefault(f => f is not null) ?? Overlap(parts);
    }

    static (string, ArrowPart?)? Lacking(IReadOnlyList<ArrowPart> parts, PartKind kind)
    {
        ArrowPart[] found = [.. parts.Where(p => p is not null && p.Kind == kind)];
        return found.Length == 1 ? null : ($"An arrow has one {kind.ToString().ToLowerInvariant()}; the parts list {found.Length}.", found.ElementAtOrDefault(1));
    }

    static (string, ArrowPart?)? Misplaced(ArrowPart part, ArrowPart shaft, ArrowPart point)
    {
        double rear = shaft.From.Meters, front = shaft.To.Meters;
        (double low, double high) = part.Kind switch
        {
            PartKind.Shaft => (-Behind, Behind + part.Length.Meters),
            PartKind.Point => (front - Ahead, front + 2 * Ahead),
            PartKind.Outsert => (rear, front + Ahead),
            PartKind.Insert => (rear, front + Behind), // the rim of an insert stands out
            PartKind.Nock => (Math.Min(rear, 0) - Behind, front),
            PartKind.Other => (Math.Min(rear, 0) - Behind, Math.Max(front, point.To.Meters)),
            _ => (rear, front),
        };
        string allowed = $"{Place(Length.FromMeters(low), part)} to {Place(Length.FromMeters(high), part)} {Unit(part)}";
        return part.From.Meters < low - Slack || part.To.Meters > high + Slack
            ? ($"The part \"{part.Name}\", {Stretch(part)}, lies off the shaft, {Stretch(shaft)}; it must lie within {allowed} from the bottom of the nock slot. Measure its place again.", part)
            : null;
    }

    static (string, ArrowPart?)? Overlap(IReadOnlyList<ArrowPart> parts)
    {
        foreach (var layer in parts.Where(p => p.IsLongitudinal && Layer(p.Kind) != 0).GroupBy(p => Layer(p.Kind)))
        {
            ArrowPart[] sorted = [.. layer.OrderBy(p => p.From.Meters)];
            for (int i = 1; i < sorted.Length; i++)
            {
                ArrowPart before = sorted[..i].MaxBy(p => p.To.Meters)!, after = sorted[i];
                if (after.From.Meters < before.To.Meters - Slack)
                {
                    return ($"The parts \"{before.Name}\", {Stretch(before)}, and \"{after.Name}\", {Stretch(after)}, overlap. Measure both from the bottom of the nock slot; of a point or nock count only what stands out of the shaft.", after);
                }
            }
        }

        return null;
    }

    // Parts of one layer cannot share a place; an insert in a shaft, a wrap on it and vanes on the wrap can.
    static int Layer(PartKind kind) => kind switch
    {
        PartKind.Shaft or PartKind.Point or PartKind.Nock => 1,
        PartKind.Insert => 2,
        PartKind.Wrap or PartKind.Outsert => 3,
        PartKind.Vanes => 4,
        _ => 0,
    };

    // Places are told in inches to those who measured in inches, in millimetres to all others.
    static string Stretch(ArrowPart part) => part.IsLongitudinal
        ? $"{Place(part.From, part)} to {Place(part.To, part)} {Unit(part)}"
        : $"at {Place(part.From, part)} {Unit(part)}";

    static string Unit(ArrowPart part) => part.From.Unit == LengthUnit.Inch ? "in" : "mm";

    static string Place(Length place, ArrowPart part) =>
        part.From.Unit == LengthUnit.Inch ? FormattableString.Invariant($"{place.Inches:0.##}") : FormattableString.Invariant($"{place.Millimeters:0.#}");
}
