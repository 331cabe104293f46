namespace Ascham.Records;

using System.Text.Json;
using Ascham.Arrows;

/// <remarks>What the bench says of the arrow.</remarks>
static partial class SetupWriter
{
    static void WriteBench(Utf8JsonWriter json, ArrowBench? bench)
    {
        if (bench is null)
        {
            return;
        }

        if (bench.Vanes is not null && !bench.Parts.Any(p => p.Kind == PartKind.Vanes))
        {
            throw new ArgumentException("A setup that gives the shape of the vanes must list them among the parts, with their mass and place.", nameof(bench));
        }

        WriteMeasure(json, "balance_point", ArrowBenchMeasures.Place, bench.BalancePoint);
        WriteMeasure(json, "spine", ArrowBenchMeasures.Sag, bench.SpineSag);
        WriteMeasure(json, "wood_spine", ArrowBenchMeasures.Sag, bench.WoodSpineSag);
        if (bench.Parts.Count > 0)
        {
            json.WriteStartObject("parts");
            var vanes = bench.Parts.FirstOrDefault(p => p.Kind == PartKind.Vanes);
            foreach (var part in bench.Parts)
            {
                json.WriteStartObject(part.Name);
                WritePart(json, part, ReferenceEquals(part, vanes) ? bench.Vanes : null);
                json.WriteEndObject();
            }

            json.WriteEndObject();
        }
    }

    static void WritePart(Utf8JsonWriter json, ArrowPart part, VaneShape? shape)
    {
        WriteText(json, "kind", part.Name == ArrowBenchMeasures.Word(part.Kind) ? null : ArrowBenchMeasures.Word(part.Kind));
        WriteMeasure(json, "mass", ArrowBenchMeasures.PartMass, part.Mass);
        WriteMeasure(json, part.IsLongitudinal ? "from" : "at", ArrowBenchMeasures.Place, part.From);
        WriteMeasure(json, "length", ArrowBenchMeasures.PartLength, part.IsLongitudinal ? part.Length : null);
        if (shape is not null)
        {
            json.WriteNumber("count", shape.Count);
            WriteMeasure(json, "height", ArrowBenchMeasures.VaneHeight, shape.Height);
            WriteMeasure(json, "tip_length", ArrowBenchMeasures.VaneLength, shape.TipLength);
            WriteMeasure(json, "sweep", ArrowBenchMeasures.VaneLength, shape.Sweep);
            WriteMeasure(json, "offset", ArrowBenchMeasures.VaneOffset, shape.Offset);
        }
    }
}
