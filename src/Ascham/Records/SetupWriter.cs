namespace Ascham.Records;

using System.Text.Encodings.Web;
using System.Text.Json;
using Ascham.Arrows;
using Ascham.Bows;
using Ascham.Sights;

/// <summary>Makes <c>setup.json</c> of a setup.</summary>
static partial class SetupWriter
{
    internal static void Write(Stream stream, Setup setup)
    {
        // The relaxed encoder leaves letters of all languages and signs such as < readable; the file is no web page.
        using var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
        json.WriteStartObject();
        json.WriteString("name", setup.Name);
        WriteSection(json, "bow", setup.Bow, WriteBow);
        WriteSection(json, "arrow", setup, WriteArrow);
        WriteSection(json, "sight", setup.Sight, WriteSight);
        WriteSection(json, "range", setup.Range, WriteRange);
        WriteSection(json, "archer", setup.Archer, WriteArcher);
        WriteSection(json, "air", setup.Air, WriteAir);
        WriteText(json, "note", setup.Note);
        json.WriteEndObject();
        json.Flush();
        stream.WriteByte((byte)'\n');
    }

    static void WriteBow(Utf8JsonWriter json, Bow bow)
    {
        WriteMeasure(json, "peak_weight", Measures.Weight, bow.PeakWeight);
        WriteMeasure(json, "launch_speed", Measures.LaunchSpeed, bow.LaunchSpeed);
        WriteMeasure(json, "launch_speed_sd", Measures.LaunchSpeedSd, bow.LaunchSpeedSd);
        WriteMeasure(json, "draw_length", Measures.Reach, bow.DrawLength);
        json.WriteString("hand", SetupFile.Hands.Write(bow.Hand));
        WriteBench(json, bow);
    }

    static void WriteArrow(Utf8JsonWriter json, Setup setup)
    {
        Arrow arrow = setup.Arrow;
        WriteMeasure(json, "mass", Measures.Mass, arrow.Mass);
        WriteMeasure(json, "shaft_diameter", Measures.Diameter, arrow.ShaftDiameter);
        WriteMeasure(json, "length", Measures.Reach, arrow.Length);
        WriteMeasure(json, "drag_constant", Measures.DragConstant, arrow.DragConstant);
        WriteMeasure(json, "drag_area", Measures.DragArea, arrow.DragArea);
        WriteBench(json, setup.ArrowBench);
    }

    static void WriteSight(Utf8JsonWriter json, SightGeometry sight)
    {
        WriteMeasure(json, "peep_to_pin", Measures.Reach, sight.PeepToPin);
        WriteMeasure(json, "peep_height", Measures.PeepHeight, sight.PeepHeight);
        json.WriteNumber("tape_per_pin_travel", sight.TapePerPinTravel);
        json.WriteString("position_increases", SetupFile.Directions.Write(sight.Increases));
        WriteMeasure(json, "scale_unit", Measures.ScaleUnit, sight.ScaleUnit);
    }

    static void WriteRange(Utf8JsonWriter json, ShootingRange range)
    {
        WriteMeasure(json, "longest_safe_distance", Measures.Distance, range.LongestSafeDistance);
        json.WriteString("backstop", range.Backstop);
        WriteMeasure(json, "butt_below", Measures.ButtEdge, range.ButtBelow);
        WriteMeasure(json, "butt_above", Measures.ButtEdge, range.ButtAbove);
        WriteMeasure(json, "butt_left", Measures.ButtEdge, range.ButtLeft);
        WriteMeasure(json, "butt_right", Measures.ButtEdge, range.ButtRight);
    }

    static void WriteArcher(Utf8JsonWriter json, Archer archer)
    {
        WriteText(json, "name", archer.Name);
        WriteMeasure(json, "expected_dispersion", Measures.Dispersion, archer.ExpectedDispersion);
    }

    static void WriteAir(Utf8JsonWriter json, AirConditions air)
    {
        WriteMeasure(json, "temperature", Measures.Temperature, air.Temperature);
        WriteMeasure(json, "pressure", Measures.Pressure, air.Pressure);
        WriteMeasure(json, "relative_humidity", Measures.Humidity, air.RelativeHumidity);
    }

    static void WriteSection<T>(Utf8JsonWriter json, string key, T? section, Action<Utf8JsonWriter, T> write)
        where T : class
    {
        if (section is not null)
        {
            json.WriteStartObject(key);
            write(json, section);
            json.WriteEndObject();
        }
    }

    static void WriteMeasure<T>(Utf8JsonWriter json, string key, Measure<T> measure, T? quantity)
        where T : struct => WriteText(json, key, quantity is { } value ? measure.Write(value) : null);

    static void WriteText(Utf8JsonWriter json, string key, string? text)
    {
        if (text is not null)
        {
            json.WriteString(key, text);
        }
    }
}
