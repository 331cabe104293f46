namespace Ascham.Arrows;

/// <summary>Where parts may sit: not two in one place, and none off the shaft.</summary>
static class PartPlaces
{
    const double Slack = 1e-4;   // m; parts that touch may be typed with rounded figures
    const double Ahead = 0.10;   // m; how far the centre of a point may lie ahead of what it sits on: longer than any broadhead (common practice, no source)
    const double Behind = 0.03;  // m; how far a nock may reach behind the shaft or the slot (common practice, no source)

    internal static void Check(IReadOnlyList<ArrowPart> parts)
    {
        ArrowPart shaft = Only(parts, PartKind.Shaft), point = Only(parts, PartKind.Point);
        if (!(shaft.Length.Meters > 0 && shaft.MassSi > 0))
        {
            throw new ArgumentException("The shaft must have a length and a mass above zero: measure the bare shaft and weigh it.", nameof(parts));
        }

        foreach (ArrowPart part in parts)
        {
            CheckPlace(part, shaft, point);
        }

        CheckOverlap(parts);
    }

    static ArrowPart Only(IReadOnlyList<ArrowPart> parts, PartKind kind)
    {
        ArrowPart[] found = [.. parts.Where(p => p is not null && p.Kind == kind)];
        return found.Length == 1
            ? found[0]
            : throw new ArgumentException($"An arrow has one {kind.ToString().ToLowerInvariant()}; the parts list {found.Length}.", nameof(parts));
    }

    static void CheckPlace(ArrowPart part, ArrowPart shaft, ArrowPart point)
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
        if (part.From.Meters < low - Slack || part.To.Meters > high + Slack)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"The part \"{part.Name}\", {Stretch(part)}, lies off the shaft, {Stretch(shaft)}; it must lie within {1000 * low:0.#} to {1000 * high:0.#} mm from the bottom of the nock slot. Measure its place again."),
                nameof(part));
        }
    }

    static void CheckOverlap(IReadOnlyList<ArrowPart> parts)
    {
        foreach (var layer in parts.Where(p => p.IsLongitudinal && Layer(p.Kind) != 0).GroupBy(p => Layer(p.Kind)))
        {
            ArrowPart[] sorted = [.. layer.OrderBy(p => p.From.Meters)];
            for (int i = 1; i < sorted.Length; i++)
            {
                ArrowPart before = sorted[..i].MaxBy(p => p.To.Meters)!, after = sorted[i];
                if (after.From.Meters < before.To.Meters - Slack)
                {
                    throw new ArgumentException(
                        $"The parts \"{before.Name}\", {Stretch(before)}, and \"{after.Name}\", {Stretch(after)}, overlap. Measure both from the bottom of the nock slot; of a point or nock count only what stands out of the shaft.",
                        nameof(parts));
                }
            }
        }
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

    static string Stretch(ArrowPart part) => part.IsLongitudinal
        ? FormattableString.Invariant($"{part.From.Millimeters:0.#} to {part.To.Millimeters:0.#} mm")
        : FormattableString.Invariant($"at {part.From.Millimeters:0.#} mm");
}
