namespace Ascham.Notebooks;

using Plotly.NET;
using UnitsNet;
using UnitsNet.Units;

/// <summary>The height of an arrow along its way, for one setup.</summary>
/// <param name="Name">Name of the setup, shown on the chart.</param>
/// <param name="Points">Distances along the line of sight, rising, with heights above the line of sight there (positive up); two or more.</param>
public sealed record PathCurve(string Name, IReadOnlyList<(Length Distance, Length Height)> Points);

/// <summary>Draws the height of arrows relative to the line of sight against distance.</summary>
public static class DropPath
{
    const int MostRowsPerCurve = 25;

    /// <summary>Draws one to four setups.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="curves">The setups.</param>
    /// <param name="distanceIn">Unit of the distance axis.</param>
    /// <param name="heightIn">Unit of the height axis.</param>
    /// <returns>The figure; vertical and horizontal scales differ, which its caption says.</returns>
    /// <exception cref="ArgumentException">There are no curves or more than four, or one has fewer than two points or a point that is not finite.</exception>
    public static Figure Draw(string title, IEnumerable<PathCurve> curves, LengthUnit distanceIn, LengthUnit heightIn)
    {
        Line[] lines = [.. Check.Some(curves, Look.Series.Count, "curves").Select((c, i) => Read(c, Look.Series[i], distanceIn, heightIn))];
        string distanceUnit = NumberText.Unit(distanceIn), heightUnit = NumberText.Unit(heightIn);
        var y = Look.Span(lines.SelectMany(l => l.Y).Append(0));
        var x = (Low: lines.Min(l => l.X.Min()), High: lines.Max(l => l.X.Max()));
        var traces = lines.Select(l => Look.Scatter(l.X, l.Y, l.Name,
            ("mode", "lines"), ("line", new { color = l.Style.Colour, dash = l.Style.Dash, width = 2.5 }),
            ("hovertemplate", $"%{{y:.4~g}} {heightUnit} at %{{x:.4~g}} {distanceUnit}<extra>{Markup.Label(l.Name)}</extra>")));
        object sight = new { type = "line", xref = "paper", x0 = 0, x1 = 1, y0 = 0, y1 = 0, line = new { color = Look.Grey, width = 1 }, layer = "below" };
        var names = EndNames(lines, y);
        int room = 34 + (int)(7.5 * lines.Max(l => Math.Min(l.Name.Length, NameWidth)));

        // A narrow page has no room beside the curves: names move into a legend above.
        Dictionary<string, object> narrow = new() { ["showlegend"] = true, ["margin.r"] = 12 };
        for (int i = 0; i < names.Count; i++)
        {
            narrow[$"annotations.{i}.visible"] = false;
        }

        GenericChart chart = Look.Chart(traces, Look.Height, narrow,
            ("xaxis", Look.Axis($"distance ({distanceUnit})", x)),
            ("yaxis", Look.Axis($"height above line of sight ({heightUnit})", y)),
            ("margin", new { l = 16, r = room, t = 32, b = 16 }), ("legend", Look.Legend), ("shapes", new[] { sight }), ("annotations", names));
        return chart.ToFigure(title,
            "Curves of height against distance. " + string.Join(" ", lines.Select(l => l.InWords(distanceUnit, heightUnit))),
            TableOf(lines, distanceUnit, heightUnit),
            "Zero is the line of sight. The vertical scale is stretched: the path is far flatter than it looks.");
    }

    const int NameWidth = 18;   // characters in a line beside a curve

    /// <summary>Names beside the ends of the curves, moved apart where they would overlap.</summary>
    static List<Dictionary<string, object>> EndNames(Line[] lines, (double Low, double High) y)
    {
        List<Dictionary<string, object>> names = [];
        double floor = double.NegativeInfinity;
        foreach (var line in lines.OrderBy(l => l.Y[^1]))
        {
            string label = Markup.Wrapped(line.Name, NameWidth);
            double half = 0.5 * 18 * label.Split("<br>").Length * (y.High - y.Low) / (Look.Height - 90);   // 18 px a line; about 90 px are margins
            double middle = Math.Max(line.Y[^1], floor + half);
            floor = middle + half;
            // A stroke in the curve's colour; the words in the page's own, which small letters need to be read.
            var note = Look.Note($"<span style=\"color:{line.Style.Colour}\">━</span> {label}", line.X[^1], middle, "left", "middle");
            note["xshift"] = 6;
            names.Add(note);
        }

        return names;
    }

    static Table TableOf(Line[] lines, string distanceUnit, string heightUnit) => Table.From(
        from line in lines
        let step = Math.Max(1, (int)Math.Ceiling((line.X.Length - 1) / (double)(MostRowsPerCurve - 1)))
        from i in Enumerable.Range(0, line.X.Length)
        where i % step == 0 || i == line.X.Length - 1
        select (line.Name, X: line.X[i], Y: line.Y[i]),
        ("setup", r => r.Name, 0), ($"distance ({distanceUnit})", r => r.X, 1), ($"height above line of sight ({heightUnit})", r => r.Y, 2));

    static Line Read(PathCurve curve, Look.Style style, LengthUnit distanceIn, LengthUnit heightIn)
    {
        Check.Text(curve.Name, "a curve is known by its name");
        double[] x = [.. curve.Points.Select(p => Check.Finite(p.Distance.As(distanceIn)))];
        double[] y = [.. curve.Points.Select(p => Check.Finite(p.Height.As(heightIn)))];
        return x.Length >= 2
            ? new(curve.Name, x, y, style)
            : throw new ArgumentException($"The curve \"{curve.Name}\" must have two points or more; it has {x.Length}.", nameof(curve));
    }

    sealed record Line(string Name, double[] X, double[] Y, Look.Style Style)
    {
        public string InWords(string distanceUnit, string heightUnit)
        {
            int top = Array.IndexOf(Y, Y.Max());
            return $"{Name}: highest {NumberText.Plain(Y[top])} {heightUnit} at {NumberText.Plain(X[top])} {distanceUnit}, "
                + $"{NumberText.Plain(Y[^1])} {heightUnit} at {NumberText.Plain(X[^1])} {distanceUnit}.";
        }
    }
}
