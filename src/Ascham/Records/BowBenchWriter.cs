namespace Ascham.Records;

using System.Text.Json;
using Ascham.Bows;
using UnitsNet;

/// <remarks>The bow on the bench.</remarks>
static partial class SetupWriter
{
    static void WriteBench(Utf8JsonWriter json, Bow bow)
    {
        WriteText(json, "kind", bow.Kind is { } kind ? BowBenchMeasures.Kinds.Write(kind) : null);
        WriteMeasure(json, "brace_height", BowBenchMeasures.Brace, bow.BraceHeight);
        WriteMeasure(json, "draw_curve_sd", BowBenchMeasures.ForceSd, SdOf(bow));
        WriteSection(json, "draw_curve", bow.DrawCurve, WriteCurve);
        WriteSection(json, "let_down", bow.LetDown, WriteCurve);
        WriteMeasure(json, "virtual_mass", BowBenchMeasures.VirtualMass, bow.VirtualMass);
        WriteMeasure(json, "virtual_mass_sd", BowBenchMeasures.VirtualMass, bow.VirtualMassSd);
        WriteSection(json, "chronographed", bow.ArrowSpeeds, WriteSpeeds);
        WriteMeasure(json, "rated_speed", BowBenchMeasures.Speed, bow.RatedSpeed);
        WriteBolts(json, bow.LimbBolts);
        if (bow.LeastGrainsPerPound is { } least)
        {
            json.WriteNumber("least_grains_per_pound", least);
        }
    }

    static void WriteCurve(Utf8JsonWriter json, DrawCurve curve)
    {
        if (curve.IsSketch)
        {
            throw new ArgumentException("A sketched draw curve is no measurement and is not written; leave DrawCurve out of the setup.", nameof(curve));
        }

        foreach (var point in curve.Points)
        {
            WriteMeasure(json, BowBenchMeasures.Draw.Write(point.Draw), BowBenchMeasures.DrawForce, (Force?)point.Force);
        }
    }

    static void WriteSpeeds(Utf8JsonWriter json, ArrowSpeeds speeds)
    {
        foreach (var arrow in speeds.Arrows)
        {
            json.WriteStartObject(BowBenchMeasures.ArrowMass.Write(arrow.Mass));
            WriteMeasure(json, "speed", BowBenchMeasures.Speed, (Speed?)arrow.Speed);
            WriteMeasure(json, "shot_sd", BowBenchMeasures.ShotSd, (Speed?)arrow.ShotSd);
            json.WriteNumber("shots", arrow.Shots);
            json.WriteEndObject();
        }
    }

    static void WriteBolts(Utf8JsonWriter json, LimbBolts? bolts)
    {
        if (bolts is not null)
        {
            json.WriteNumber("limb_bolts_turns_out", bolts.TurnsOut);
            json.WriteNumber("limb_bolts_most_out", bolts.MostTurnsOut);
            WriteMeasure(json, "weight_per_turn", BowBenchMeasures.PerTurn, (Force?)bolts.WeightPerTurn);
        }
    }

    // The file knows one spread for all points of both curves.
    static Force? SdOf(Bow bow)
    {
        Force?[] all = [.. new[] { bow.DrawCurve, bow.LetDown }.OfType<DrawCurve>().SelectMany(c => c.Points).Where(p => p.Force.Newtons > 0).Select(p => p.ForceSd).Distinct()];
        return all.Length <= 1 ? all.FirstOrDefault()
            : throw new ArgumentException("The file holds one standard deviation for all points of the draw curves; give each point the same, or none.", nameof(bow));
    }
}
