namespace Ascham.Tests.RecordsTests;

using System.Text;
using Ascham.Arrows;
using Ascham.Bows;
using Ascham.Records;
using Ascham.Sights;
using UnitsNet;
using Xunit;

/// <summary>One small invented case, as files and as records.</summary>
static class Example
{
    public const string Sessions = """"
        # invented
        session,date,setup,distance_source,distance_sd_yd,setting_sd_mm,temperature_F,pressure_inHg,wind,note
        evening,2026-09-12,field bow,ranged,0.5,0.2,68,29.8,"light, from the left",
        morning,2026-09-13,field bow,judged,,,,,,"said ""calm"""

        """";

    public const string Shots = """
        session,distance_yd,shot,right_in,up_in,arrow,point_type,fletched,missed,called,hold_s,setting_mm,slope_deg,group,note
        # after rain
        evening,40,1,-1.5,0.25,3,field,yes,,,5.5,31.5,-4,first,
        evening,40,2,,,4,field,no,low,yes,,,,first,into the bank

        """;

    public const string Marks = """
        distance_yd,position_mm,sd_mm,compensated
        20,10,0.1,
        30,14.5,0.1,no
        40,20.25,,yes

        """;

    public const string SetupText = """
        {
          // invented
          "name": "field bow",
          "bow": { "peak_weight": "62 lb", "launch_speed": "278 ft/s", "launch_speed_sd": "1.5 fps", "draw_length": "28.5 in", "hand": "left" },
          "arrow": { "mass": "412 gr", "shaft_diameter": "5.2 mm", "length": "28 in", "drag_constant": "0.0025 1/m" },
          "sight": {
            "peep_to_pin": "34 in",
            "peep_height": "10.4 cm",
            "tape_per_pin_travel": 1,
            "position_increases": "down",
            "scale_unit": "0.5 mm"
          },
          "archer": { "name": "Robin", "expected_dispersion": "1.2 mrad" },
          "air": { "temperature": "15 C", "pressure": "1013.25 hPa", "relative_humidity": "50 %" },
          "range": { "longest_safe_distance": "80 yd", "backstop": "earth bank", "butt_below": "0.6 m", "butt_left": "24 in" },
          "note": "for the tests", // a comma after the last entry is tolerated
        }
        """;

    public static readonly SightGeometry Sight = new()
    {
        PeepToPin = Length.FromInches(34),
        PeepHeight = Length.FromCentimeters(10.4),
        TapePerPinTravel = 1,
        Increases = ScaleDirection.Down,
        ScaleUnit = Length.FromMillimeters(0.5),
    };

    public static readonly Setup Setup = new()
    {
        Name = "field bow",
        Bow = new Bow
        {
            PeakWeight = Force.FromPoundsForce(62),
            LaunchSpeed = Speed.FromFeetPerSecond(278),
            LaunchSpeedSd = Speed.FromFeetPerSecond(1.5),
            DrawLength = Length.FromInches(28.5),
            Hand = Hand.Left,
        },
        Arrow = new Arrow
        {
            Mass = Mass.FromGrains(412),
            ShaftDiameter = Length.FromMillimeters(5.2),
            Length = Length.FromInches(28),
            DragConstant = ReciprocalLength.FromInverseMeters(0.0025),
        },
        Sight = Sight,
        Archer = new Archer { Name = "Robin", ExpectedDispersion = Angle.FromMilliradians(1.2) },
        Air = new AirConditions
        {
            Temperature = Temperature.FromDegreesCelsius(15),
            Pressure = Pressure.FromHectopascals(1013.25),
            RelativeHumidity = Ratio.FromPercent(50),
        },
        Range = new ShootingRange
        {
            LongestSafeDistance = Length.FromYards(80),
            Backstop = "earth bank",
            ButtBelow = Length.FromMeters(0.6),
            ButtLeft = Length.FromInches(24),
        },
        Note = "for the tests",
    };

    /// <summary>Reads a file by what its name says it is, with a sight that has no scale unit.</summary>
    public static object Read(string path) => Path.GetFileName(path) switch
    {
        "setup.json" => SetupFile.Read(path),
        "sessions.csv" => SessionsFile.Read(path),
        "shots.csv" => ShotsFile.Read(path),
        "log.csv" => LogFile.Read(path),
        "marks.csv" => MarksFile.Read(path, Sight with { ScaleUnit = null }),
        _ => throw new ArgumentException(path),
    };

    public static string ErrorOf(string name, string text) => ErrorOf(name, Encoding.UTF8.GetBytes(text)).Message;

    public static RecordException ErrorOf(string name, byte[] bytes)
    {
        using var folder = new ScratchFolder();
        string path = folder.Put(name, bytes);
        var error = Assert.Throws<RecordException>(() => Read(path));
        Assert.Equal(path, error.File);
        return error;
    }
}
