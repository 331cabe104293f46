// Reads the invented tape-check files, checks the tape, prints the verdict: the library's main job, ahead of time compiled.
using Ascham.Air;
using Ascham.Flight;
using Ascham.Groups;
using Ascham.Quantities;
using Ascham.Records;
using Ascham.Sights;

string folder = args.Length == 1 ? args[0] : throw new ArgumentException("Give the folder of the files.");
string shotsPath = Path.Combine(folder, "shots.csv");
var setup = SetupFile.Read(Path.Combine(folder, "setup.json"));
var sessions = SessionsFile.Read(SessionsFile.Beside(shotsPath), setup.Sight);
var shots = ShotsFile.Read(shotsPath, setup.Sight, sessions);
var tape = Tape.Of(MarksFile.Read(Path.Combine(folder, "marks.csv"), setup.Sight));

var bow = new SightModel
{
    Geometry = setup.Sight,
    LaunchSpeed = setup.Bow.LaunchSpeed,
    Drag = Drag.FromConstant(setup.Arrow.DragConstant!.Value),
    Air = Air.Moist(setup.Air!.Temperature!.Value, setup.Air.Pressure!.Value, setup.Air.RelativeHumidity!.Value),
    Gravity = Gravity.Standard,
};
var centres = StationCentres.Fit(StationGroup.From(shots));
TapeStation[] stations = [.. centres.Stations.Select(c => new TapeStation
{
    Distance = c.Station.Distance,
    Setting = tape.PositionAt(c.Station.Distance),
    MeanUp = c.MeanUp,
    MeanUpSd = c.MeanUpStandardError,
    ScatterFreedom = centres.Vertical.DegreesOfFreedom,
    DistanceSd = sessions[0].DistanceSd!.Value,
    SettingSd = sessions[0].SettingSd!.Value,
    SettingKey = c.Station.ToString(),
    Arrows = c.Count,
})];
var check = TapeCheck.Run(tape, stations, bow, 6.Inches, 0.9);
Console.WriteLine($"{check.Verdict.Text()}: {check.Scale.Value.Percent:0.00} %");
