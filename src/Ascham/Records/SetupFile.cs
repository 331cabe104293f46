namespace Ascham.Records;

using Ascham.Bows;
using Ascham.Quantities;
using Ascham.Sights;

/// <summary>Reads and writes <c>setup.json</c>.</summary>
/// <remarks>
/// Each quantity is a text of number, space and unit, such as <c>"28.5 in"</c>; either unit system, key by key.
/// Comments are tolerated on reading and not kept on writing. Unknown keys are errors, as are missing ones: nothing is assumed.
/// </remarks>
public static class SetupFile
{
    internal static readonly Words<Hand> Hands = new(("right", Hand.Right), ("left", Hand.Left));
    internal static readonly Words<ScaleDirection> Directions = new(("down", ScaleDirection.Down), ("up", ScaleDirection.Up));

    /// <summary>Reads a setup.</summary>
    /// <param name="path">Path of the file.</param>
    /// <returns>The setup, quantities in the units of the file.</returns>
    /// <exception cref="RecordException">The file cannot be read, or something in it is not as it should be.</exception>
    public static Setup Read(string path)
    {
        using var stream = FileProblem.Open(path);
        return SetupReader.Read(stream, path);
    }

    /// <summary>Writes a setup, replacing the file whole or not at all.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="setup">The setup; quantities keep their units.</param>
    /// <exception cref="RecordException">The file cannot be written, or a value is one that could not be read back.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><see cref="SightGeometry.TapePerPinTravel"/> is not positive and finite.</exception>
    public static void Write(string path, Setup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        Require.Positive(setup.Sight.TapePerPinTravel, "");
        AtomicFile.Write(path, stream => SetupWriter.Write(stream, setup), stream => SetupReader.Read(stream, path));
    }
}
