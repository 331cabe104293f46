namespace Ascham.Notebooks;

using Ascham.Sights;
using Plotly.NET;
using UnitsNet.Units;

/// <summary>Draws an old and a new tape beside each other on one scale, each old mark joined to the new one.</summary>
public static class TapePair
{
    const int PerMark = 46;   // CSS pixels

    /// <summary>Draws the two tapes.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="old">Name and marks of the old tape.</param>
    /// <param name="renewed">Name and marks of the new one, for the same distances; both on one scale.</param>
    /// <param name="distanceIn">Unit of distances.</param>
    /// <param name="positionIn">Unit along the scale.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">The tapes have not the same distances.</exception>
    public static Figure Draw(string title, (string Name, Tape Tape) old, (string Name, Tape Tape) renewed, LengthUnit distanceIn, LengthUnit positionIn)
    {
        ArgumentNullException.ThrowIfNull(old.Tape);
        ArgumentNullException.ThrowIfNull(renewed.Tape);
        if (!old.Tape.Marks.Select(m => m.Distance.Meters).SequenceEqual(renewed.Tape.Marks.Select(m => m.Distance.Meters)))
        {
            throw new ArgumentException("Both tapes must have the same distances.", nameof(renewed));
        }

        string far = NumberText.Unit(distanceIn), small = NumberText.Unit(positionIn);
        var marks = old.Tape.Marks.Zip(renewed.Tape.Marks, (a, b) => (At: a.Distance.As(distanceIn), Old: a.Position.As(positionIn), New: b.Position.As(positionIn))).ToArray();
        List<Trace> traces = [.. marks.Select(m => Look.Scatter([0, 1], [m.Old, m.New], "the same distance", ("mode", "lines"), ("line", new { color = Look.Grey, width = 1 }), ("showlegend", m == marks[0]), ("hoverinfo", "skip")))];
        traces.Add(Strip(0, [.. marks.Select(m => m.Old)], "middle left"));
        traces.Add(Strip(1, [.. marks.Select(m => m.New)], "middle right"));
        var (low, high) = Look.Span(marks.SelectMany(m => (double[])[m.Old, m.New]), 0.05);
        var across = Look.Axis("", (-0.45, 1.45));
        (across["tickvals"], across["ticktext"], across["showgrid"], across["zeroline"], across["side"]) = (new[] { 0, 1 }, new[] { Markup.Wrapped(old.Name, 20), Markup.Wrapped(renewed.Name, 20) }, false, false, "top");
        var chart = Look.Chart(traces, 120 + PerMark * marks.Length, [],
            ("xaxis", across), ("yaxis", Look.Axis($"place on the scale ({small})", (high, low))), ("margin", new { l = 16, r = 16, t = 48, b = 16 }));
        return chart.ToFigure(title,
            $"Two tapes beside each other. {old.Name}: {string.Join(", ", marks.Select(m => $"{NumberText.Plain(m.At)} {far} at {NumberText.Fixed(m.Old, 1)}"))} {small}. {renewed.Name}: {string.Join(", ", marks.Select(m => $"{NumberText.Plain(m.At)} {far} at {NumberText.Fixed(m.New, 1)}"))} {small}.",
            Table.From(marks, ($"distance ({far})", m => m.At, 0), ($"{old.Name} ({small})", m => m.Old, 2), ($"{renewed.Name} ({small})", m => m.New, 2), ($"moves by ({small})", m => m.New - m.Old, 2)),
            "Grey lines join the marks of one distance. Not to print: check the size of a printed tape against a ruler.");

        Trace Strip(double x, double[] y, string where) => Look.Scatter([.. y.Select(_ => x)], y, x == 0 ? old.Name : renewed.Name, ("mode", "lines+markers+text"), ("line", new { color = Look.Series[(int)x].Colour, width = 3 }),
            ("marker", new { color = Look.Series[(int)x].Colour, symbol = "line-ew-open", size = 22, line = new { width = 3 } }), ("text", marks.Select(m => x == 0 ? $"{NumberText.Plain(m.At)} {far}\u2003" : $"\u2003{NumberText.Plain(m.At)} {far}")), ("textposition", where), ("cliponaxis", false),
            ("showlegend", false), ("hovertemplate", $"%{{y:.2f}} {small}<extra></extra>"));
    }
}
