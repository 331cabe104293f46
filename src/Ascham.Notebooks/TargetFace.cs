namespace Ascham.Notebooks;

using Ascham.Groups;
using Plotly.NET;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Draws impacts to scale as the archer sees them, one panel per distance, all panels to the same scale.</summary>
public static class TargetFace
{
    const int MostPanels = 12, MostGroups = 3;   // a fourth look is kept for called flyers
    const int Columns = 3;
    const int PanelHeight = 290, RowedPanelHeight = 222, OnlyPanelHeight = 340, RowGap = 95, Below = 64;   // CSS pixels; the gap holds axis title and panel name

    /// <summary>Draws shots, one panel per distance.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="shots">The shots; at least one left a mark.</param>
    /// <param name="distanceIn">Unit in which the panels are named.</param>
    /// <param name="offsetsIn">Unit of the axes.</param>
    /// <param name="matters">Diameter of the circle that matters, drawn around the aim point; positive; left out, none is drawn.</param>
    /// <param name="nameArrows">Whether the numbers written on the arrows stand beside their marks.</param>
    /// <returns>The figure; its caption counts the arrows that missed the butt.</returns>
    /// <exception cref="ArgumentException">No shot left a mark, or there are more than 12 distances.</exception>
    public static Figure Draw(string title, IEnumerable<Shot> shots, LengthUnit distanceIn, LengthUnit offsetsIn, Length? matters = null, bool nameArrows = false) =>
        Draw(title, FacePanel.PerDistance(shots, distanceIn), offsetsIn, matters, nameArrows);

    /// <summary>Draws panels of groups.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="panels">1 to 12 panels with up to three group names between them.</param>
    /// <param name="offsetsIn">Unit of the axes.</param>
    /// <param name="matters">Diameter of the circle that matters, drawn around the aim point; positive; left out, none is drawn.</param>
    /// <param name="nameArrows">Whether the numbers written on the arrows stand beside their marks.</param>
    /// <returns>The figure; its caption counts the arrows that missed the butt.</returns>
    /// <exception cref="ArgumentException">There are no marks, too many panels or too many group names, or a mark is not finite.</exception>
    public static Figure Draw(string title, IEnumerable<FacePanel> panels, LengthUnit offsetsIn, Length? matters = null, bool nameArrows = false)
    {
        var all = Check.Some(panels, MostPanels, "panels");
        string unit = NumberText.Unit(offsetsIn);
        string[] groups = [.. Check.Some(all.SelectMany(p => p.Groups).Select(g => g.Name).Distinct(), MostGroups, "group names", nameof(panels))];
        double ring = matters is { } m ? Check.Positive(m.As(offsetsIn), unit, nameof(matters)) / 2 : 0;
        var face = new FaceDrawing(offsetsIn, groups, HalfWidth(all, ring, offsetsIn), ring, nameArrows, all.Sum(p => p.Groups.Sum(g => g.Marks.Count)));

        List<Trace> traces = [];
        List<object> shapes = [], names = [];
        Dictionary<string, object> narrow = [];
        List<(string Member, object Value)> members = [];
        for (int i = 0; i < all.Count; i++)
        {
            string number = i == 0 ? "" : $"{i + 1}";
            traces.AddRange(face.Traces(all[i], number));
            shapes.AddRange(face.Rings(number));
            names.Add(NameOf(all[i], number));
            members.AddRange(face.Axes(number, Grid(i, all.Count, Columns)));
            var one = Grid(i, all.Count, 1);
            (narrow[$"xaxis{number}.domain"], narrow[$"yaxis{number}.domain"]) = (one.X, one.Y);
        }

        int above = Above(face.Legend, 700), narrowAbove = Above(face.Legend, 300);   // px wide: a still picture, a phone
        (narrow["margin.t"], narrow["height"]) = (narrowAbove, narrowAbove + PlotHeight(all.Count, 1) + Below);
        members.AddRange([("shapes", shapes), ("annotations", names), ("showlegend", true), ("legend", Look.LegendOnTop),
            ("margin", new { l = 16, r = 16, t = above, b = Below })]);
        var chart = Look.Chart(traces, above + PlotHeight(all.Count, Columns) + Below, narrow, [.. members]);
        return chart.ToFigure(title, InWords(all, offsetsIn), TableOf(all, offsetsIn), Caption(all, ring, unit));
    }

    static double HalfWidth(IReadOnlyList<FacePanel> panels, double ring, LengthUnit unit)
    {
        var marks = panels.SelectMany(p => p.Groups).SelectMany(g => g.Marks).Select(m => m.At).ToArray();
        if (marks.Length == 0)
        {
            throw new ArgumentException("At least one arrow must have left a mark.", nameof(panels));
        }

        var centres = panels.SelectMany(p => p.Groups).Where(g => g.Centre is not null).Select(g => g.Centre!).ToArray();
        var circles = panels.SelectMany(p => p.Groups).SelectMany(g => g.Circles).Select(c => new FaceCentre(c.At, c.Radius, 0));
        var reach = marks.SelectMany(i => (Length[])[i.Right, i.Up]).Select(l => Math.Abs(Check.Finite(l.As(unit), "impact")))
            .Concat(centres.Concat(circles).SelectMany(c => (Length[])[c.At.Right, c.At.Up], (c, l) => Math.Abs(Check.Finite(l.As(unit), "centre")) + Check.Positive(c.Radius.As(unit), NumberText.Unit(unit), "radius")))
            .Append(ring);
        double half = reach.Max();
        return 1.12 * (half > 0 ? half : 1);
    }

    /// <summary>Room above the panels, in pixels: the legend's rows at this width, and the panels' names.</summary>
    static int Above(IReadOnlyCollection<string> legend, int width)
    {
        int entry = 45 + (int)(7.5 * Math.Min(Look.LegendWidth, legend.Max(name => name.Length))), columns = Math.Clamp(width / entry, 1, legend.Count);
        return 34 + (20 * ((legend.Count + columns - 1) / columns));
    }

    static int PlotHeight(int count, int most)
    {
        int rows = (count + most - 1) / most;
        return count == 1 ? OnlyPanelHeight : (rows * (most == 1 ? PanelHeight : RowedPanelHeight)) + ((rows - 1) * RowGap);
    }

    /// <summary>Where a panel stands, as fractions of the plot: filled row by row from the top.</summary>
    static (double[] X, double[] Y) Grid(int index, int count, int most)
    {
        int columns = Math.Min(count, most), rows = (count + columns - 1) / columns, column = index % columns, row = index / columns;
        double gapX = columns > 1 ? 0.09 : 0, gapY = rows > 1 ? RowGap / (double)PlotHeight(count, most) : 0;
        double width = (1 - (gapX * (columns - 1))) / columns, height = (1 - (gapY * (rows - 1))) / rows;
        double left = column * (width + gapX), top = 1 - (row * (height + gapY));
        return ([left, left + width], [top - height, top]);
    }

    static Dictionary<string, object> NameOf(FacePanel panel, string number)
    {
        var note = Look.Note($"<b>{Markup.Wrapped(panel.Name, 30)}</b>", 0.5, 1, "center", "bottom");
        (note["xref"], note["yref"]) = ($"x{number} domain", $"y{number} domain");
        return note;
    }

    static string Caption(IReadOnlyList<FacePanel> panels, double ring, string unit)
    {
        List<string> sentences = ["Seen by the archer; the aim point is at zero" + (panels.Count > 1 ? ", and all panels have the same scale." : ".")];
        if (ring > 0)
        {
            sentences.Add($"The dashed circle is {NumberText.Plain(2 * ring)} {unit} across.");
        }

        double[] levels = [.. panels.SelectMany(p => p.Groups).Where(g => g.Centre is not null).Select(g => g.Centre!.Level).Distinct()];
        if (levels.Length > 0)
        {
            sentences.Add($"A shaded disc holds the true centre of its group with {string.Join(" or ", levels.Select(NumberText.Percent))} confidence.");
        }

        var circles = panels.SelectMany(p => p.Groups).SelectMany(g => g.Circles).ToArray();
        if (circles.Length > 0)
        {
            sentences.Add($"Dotted or broken circles: {string.Join("; ", circles.Select(c => c.Name).Distinct())}.");
        }

        sentences.AddRange(from p in panels
                           where p.Missed.Count > 0
                           let ways = p.Missed.GroupBy(m => m).OrderBy(g => g.Key).Select(g => $"{g.Count()} {(g.Key == Miss.Unknown ? "unseen" : ShotFrame.MissWord(g.Key))}")
                           select $"Not drawn: {p.Missed.Count} {Arrows(p.Missed.Count)} missed the butt at {p.Name} ({string.Join(", ", ways)}).");
        return string.Join(" ", sentences);
    }

    static string InWords(IReadOnlyList<FacePanel> panels, LengthUnit unit) =>
        "Marks on the face relative to the aim point. " + string.Join(" ", from p in panels from g in p.Groups select InWords(p, g, unit));

    static string InWords(FacePanel panel, FaceGroup group, LengthUnit unit)
    {
        string who = $"{panel.Name}, {group.Name}: {group.Marks.Count} {(group.Marks.Count == 1 ? "mark" : "marks")}";
        if (group.Marks.Count == 0)
        {
            return who + ".";
        }

        double right = group.Marks.Average(m => m.At.Right.As(unit)), up = group.Marks.Average(m => m.At.Up.As(unit));
        string name = NumberText.Unit(unit);
        int called = group.Marks.Count(m => m.Called);
        return $"{who}{(called > 0 ? $", {called} of them called flyers" : "")}, on average {Size(right)} {name} {(right < 0 ? "left" : "right")} and {Size(up)} {name} {(up < 0 ? "low" : "high")}.{Circles()}";

        string Circles() => string.Concat(group.Circles.Select(c => $" {c.Name}: radius {NumberText.Fixed(c.Radius.As(unit), 1)} {name}."));

        static string Size(double value) => NumberText.Fixed(Math.Abs(value), 1);
    }

    static Table TableOf(IReadOnlyList<FacePanel> panels, LengthUnit unit)
    {
        string name = NumberText.Unit(unit);
        return Table.From(
            from p in panels from g in p.Groups from m in g.Marks select (Panel: p.Name, Group: g.Name, Mark: m),
            ("panel", r => r.Panel, 0), ("group", r => r.Group, 0), ("arrow", r => r.Mark.Arrow, 0), ($"right ({name})", r => r.Mark.At.Right.As(unit), 2),
            ($"up ({name})", r => r.Mark.At.Up.As(unit), 2), ("called", r => r.Mark.Called ? "yes" : "", 0));
    }

    static string Arrows(int count) => count == 1 ? "arrow" : "arrows";
}
