namespace Ascham.Notebooks;

using Ascham.Groups;
using UnitsNet;
using UnitsNet.Units;

/// <summary>One mark on a face.</summary>
/// <param name="At">Where it is.</param>
/// <param name="Called">Whether the archer called a flyer before looking.</param>
/// <param name="Arrow">The number written on the arrow, when known.</param>
public sealed record FaceMark(Impact At, bool Called = false, string? Arrow = null);

/// <summary>The centre of a group and how well it is known.</summary>
/// <param name="At">The centre.</param>
/// <param name="Radius">Radius of the disc that holds the true centre with the probability <paramref name="Level"/>; positive.</param>
/// <param name="Level">Level of the disc, between 0 and 1: 0.90 for 90 %.</param>
public sealed record FaceCentre(Impact At, Length Radius, double Level);

/// <summary>Marks that belong together, such as those of one session or one kind of point.</summary>
/// <param name="Name">Name, shown on the chart; groups of the same name in several panels look alike.</param>
/// <param name="Marks">The marks; may be empty.</param>
/// <param name="Centre">Centre of the group; left out, none is drawn.</param>
public sealed record FaceGroup(string Name, IReadOnlyList<FaceMark> Marks, FaceCentre? Centre = null)
{
    /// <summary>Circles drawn in the look of the group, such as the one that should hold its next arrow; none when not given.</summary>
    public IReadOnlyList<FaceCircle> Circles { get; init; } = [];
}

/// <summary>A named circle on a face.</summary>
/// <param name="Name">What it is, shown in the legend, such as <c>next arrow, 90 %</c>.</param>
/// <param name="At">Its centre.</param>
/// <param name="Radius">Its radius; positive.</param>
public sealed record FaceCircle(string Name, Impact At, Length Radius);

/// <summary>What one panel of a <see cref="TargetFace"/> shows: a face at one distance, or one session.</summary>
/// <param name="Name">Name, shown above the panel.</param>
/// <param name="Groups">Groups of marks.</param>
/// <param name="Missed">Arrows that left no mark.</param>
public sealed record FacePanel(string Name, IReadOnlyList<FaceGroup> Groups, IReadOnlyList<Miss> Missed)
{
    /// <summary>Makes a panel of impacts that form one group.</summary>
    /// <param name="name">Name of the panel.</param>
    /// <param name="impacts">The impacts.</param>
    /// <param name="centre">Centre of the group.</param>
    /// <returns>The panel.</returns>
    public static FacePanel Of(string name, IEnumerable<Impact> impacts, FaceCentre? centre = null) =>
        new(name, [new("arrows", [.. impacts.Select(i => new FaceMark(i))], centre)], []);

    /// <summary>Makes one panel per distance, nearest first.</summary>
    /// <param name="shots">The shots.</param>
    /// <param name="distanceIn">Unit in which the panels are named; distances alike to a thousandth of it share a panel.</param>
    /// <param name="centre">Works out the centre of a group of impacts, called flyers left out; left out, none is drawn.</param>
    /// <param name="groupBy">What tells groups apart, such as <c>s => s.Session</c>; left out, the shots of a distance are one group.</param>
    /// <returns>The panels.</returns>
    public static IReadOnlyList<FacePanel> PerDistance(
        IEnumerable<Shot> shots, LengthUnit distanceIn, Func<IReadOnlyList<Impact>, FaceCentre?>? centre = null, Func<Shot, string?>? groupBy = null)
    {
        ArgumentNullException.ThrowIfNull(shots);
        string unit = NumberText.Unit(distanceIn);
        return
        [
            .. from shot in shots
               group shot by Math.Round(shot.Distance.As(distanceIn), 3) into station
               orderby station.Key
               select new FacePanel(
                   NumberText.With(NumberText.Plain(station.Key), unit),
                   [.. station.GroupBy(s => groupBy?.Invoke(s) ?? "arrows").Select(g => Group(g.Key, g, centre))],
                   [.. station.Where(s => s.Impact is null).Select(s => s.Missed ?? Miss.Unknown)]),
        ];
    }

    static FaceGroup Group(string name, IEnumerable<Shot> shots, Func<IReadOnlyList<Impact>, FaceCentre?>? centre)
    {
        FaceMark[] marks = [.. shots.SelectMany(s => s.Impact is { } at ? (FaceMark[])[new(at, s.Called, s.Arrow)] : [])];
        Impact[] counted = [.. from m in marks where !m.Called select m.At];
        return new(name, marks, counted.Length > 0 ? centre?.Invoke(counted) : null);
    }
}
