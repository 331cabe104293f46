namespace Ascham.Records;

using Ascham.Groups;
using Ascham.Sights;

/// <summary>A shot sheet with the sessions it names: <c>shots.csv</c> and, in the same folder, <c>sessions.csv</c>.</summary>
/// <param name="Shots">The shots in the order of the file.</param>
/// <param name="Sessions">The sessions in the order of theirs.</param>
public sealed record ShotRecords(IReadOnlyList<Shot> Shots, IReadOnlyList<Session> Sessions)
{
    /// <summary>Reads both files.</summary>
    /// <param name="shotsPath">Path of the shots file.</param>
    /// <param name="sight">The sight; needed only for settings in its scale numbers.</param>
    /// <returns>Shots and sessions; each shot belongs to one of the sessions.</returns>
    /// <exception cref="RecordException">A file cannot be read, or something in it is not as it should be.</exception>
    public static ShotRecords Read(string shotsPath, SightGeometry? sight = null)
    {
        FileProblem.Open(shotsPath).Dispose(); // what is wrong with the path itself is said first
        string sessionsPath = SessionsFile.Beside(shotsPath);
        if (!File.Exists(sessionsPath))
        {
            throw new RecordException(new(sessionsPath), "there is no such file", expected: "the sessions beside the shots file");
        }

        var sessions = SessionsFile.Read(sessionsPath, sight);
        return new(ShotsFile.Read(shotsPath, sight, sessions), sessions);
    }
}
