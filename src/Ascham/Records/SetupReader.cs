namespace Ascham.Records;

using Ascham.Arrows;
using Ascham.Bows;
using Ascham.Sights;

/// <summary>Makes a setup of <c>setup.json</c>.</summary>
static class SetupReader
{
    internal static Setup Read(Stream stream, string file)
    {
        var root = JsonText.Read(stream, file);
        var setup = new Setup
        {
            Name = root.RequiredText("name"),
            Bow = ReadBow(root.RequiredSection("bow")),
            Arrow = ReadArrow(root.RequiredSection("arrow"), out var bench),
            ArrowBench = bench,
            Sight = ReadSight(root.RequiredSection("sight")),
            Range = ReadRange(root.RequiredSection("range")),
            Archer = root.Section("archer") is { } archer ? ReadArcher(archer) : null,
            Air = root.Section("air") is { } air ? ReadAir(air) : null,
            Note = root.Text("note"),
        };
        root.Done();
        return setup;
    }

    static Bow ReadBow(JsonSection section)
    {
        var bow = new Bow
        {
            PeakWeight = section.RequiredMeasure("peak_weight", Measures.Weight),
            LaunchSpeed = section.RequiredMeasure("launch_speed", Measures.LaunchSpeed),
            LaunchSpeedSd = section.Measure("launch_speed_sd", Measures.LaunchSpeedSd),
            DrawLength = section.Measure("draw_length", Measures.Reach),
            Hand = section.Word("hand", SetupFile.Hands) ?? Hand.Right,
        };
        bow = BowBenchReader.Read(section, bow);
        section.Done();
        return bow;
    }

    static Arrow ReadArrow(JsonSection section, out ArrowBench? bench)
    {
        var arrow = new Arrow
        {
            Mass = section.RequiredMeasure("mass", Measures.Mass),
            ShaftDiameter = section.Measure("shaft_diameter", Measures.Diameter),
            Length = section.Measure("length", Measures.Reach),
            DragConstant = section.Measure("drag_constant", Measures.DragConstant),
            DragArea = section.Measure("drag_area", Measures.DragArea),
        };
        section.NotBoth("drag_constant", "drag_area");
        bench = ArrowBenchReader.Read(section);
        section.Done();
        return arrow;
    }

    static SightGeometry ReadSight(JsonSection section)
    {
        var sight = new SightGeometry
        {
            PeepToPin = section.RequiredMeasure("peep_to_pin", Measures.Reach),
            PeepHeight = section.RequiredMeasure("peep_height", Measures.PeepHeight),
            TapePerPinTravel = section.RequiredNumber("tape_per_pin_travel", high: 1000),
            Increases = section.RequiredWord("position_increases", SetupFile.Directions),
            ScaleUnit = section.Measure("scale_unit", Measures.ScaleUnit),
        };
        section.Done();
        return sight;
    }

    static ShootingRange ReadRange(JsonSection section)
    {
        var range = new ShootingRange
        {
            LongestSafeDistance = section.RequiredMeasure("longest_safe_distance", Measures.Distance),
            Backstop = section.RequiredText("backstop"),
            ButtBelow = section.Measure("butt_below", Measures.ButtEdge),
            ButtAbove = section.Measure("butt_above", Measures.ButtEdge),
            ButtLeft = section.Measure("butt_left", Measures.ButtEdge),
            ButtRight = section.Measure("butt_right", Measures.ButtEdge),
        };
        section.Done();
        return range;
    }

    static Archer ReadArcher(JsonSection section)
    {
        var archer = new Archer { Name = section.Text("name"), ExpectedDispersion = section.Measure("expected_dispersion", Measures.Dispersion) };
        section.Done();
        return archer;
    }

    static AirConditions ReadAir(JsonSection section)
    {
        var air = new AirConditions
        {
            Temperature = section.Measure("temperature", Measures.Temperature),
            Pressure = section.Measure("pressure", Measures.Pressure),
            RelativeHumidity = section.Measure("relative_humidity", Measures.Humidity),
        };
        section.Done();
        return air;
    }
}
