namespace Ascham.Notebooks;

using Plotly.NET;
using UnitsNet.Units;

/// <summary>Draws the panels of one target face: rings, the circle that matters, groups, called flyers, centres.</summary>
/// <param name="unit">Unit of the axes.</param>
/// <param name="groupNames">Names of all groups, in the order of their looks.</param>
/// <param name="half">half the width and height of each panel, in <paramref name="unit"/>.</param>
/// <param name="ring">Radius of the circle that matters, in <paramref name="unit"/>; 0 for none.</param>
/// <param name="nameArrows">Whether arrow numbers are written.</param>
/// <param name="marks">How many marks all panels hold: many are drawn smaller.</param>
sealed class FaceDrawing(LengthUnit unit, string[] groupNames, double half, double ring, bool nameArrows, int marks)
{
    readonly HashSet<string> inLegend = [];

    readonly string abbreviation = NumberText.Unit(unit);

    static readonly Look.Style CalledLook = Look.Series[1] with { Symbol = "x" };
    static readonly Look.Style[] GroupLooks = [Look.Series[0], Look.Series[2] with { Symbol = "square" }, Look.Series[3]];

    static readonly string[] CircleDashes = ["dot", "longdash", "dashdot"];

    /// <summary>What the legend names by now; each look is named once for all panels.</summary>
    public IReadOnlyCollection<string> Legend => inLegend;

    double Step
    {
        get
        {
            // The largest of 1, 2, 5 times a power of ten that still gives two rings.
            double power = Math.Pow(10, Math.Floor(Math.Log10(half / 2)));
            return power * (half / 2 / power >= 5 ? 5 : half / 2 / power >= 2 ? 2 : 1);
        }
    }

    public IEnumerable<(string Member, object Value)> Axes(string number, (double[] X, double[] Y) domain)
    {
        var x = Axis($"right of aim ({abbreviation})", domain.X);
        var y = Axis($"above aim ({abbreviation})", domain.Y);
        // Constrained on both axes: the range stays what was asked for at any shape of the page, and a circle stays round.
        (x["anchor"], y["anchor"], y["scaleanchor"]) = ($"y{number}", $"x{number}", $"x{number}");
        y["constraintoward"] = "top";   // below the panel's name
        return [($"xaxis{number}", x), ($"yaxis{number}", y)];

        Dictionary<string, object> Axis(string title, double[] span)
        {
            var axis = Look.Axis(title, (-half, half));
            (axis["domain"], axis["constrain"], axis["dtick"]) = (span, "domain", Step);
            (axis["showgrid"], axis["zeroline"], axis["showline"], axis["mirror"]) = (false, false, true, true);
            return axis;
        }
    }

    /// <summary>Plain rings for scale at the ticks, and a cross at the aim point.</summary>
    public IEnumerable<object> Rings(string number)
    {
        for (double r = Step; r < half; r += Step)
        {
            yield return Shape("circle", -r, r, -r, r, 1);
        }

        double arm = 0.04 * half;
        yield return Shape("line", -arm, arm, 0, 0, 1.5);
        yield return Shape("line", 0, 0, -arm, arm, 1.5);

        object Shape(string type, double x0, double x1, double y0, double y1, double width) => new
        {
            type,
            xref = $"x{number}",
            yref = $"y{number}",
            x0,
            x1,
            y0,
            y1,
            layer = "below",
            line = new { color = type == "line" ? Look.Grey : Look.FaintGrey, width },
        };
    }

    public IEnumerable<Trace> Traces(FacePanel panel, string number)
    {
        List<Trace> traces = [];
        if (ring > 0)
        {
            traces.Add(Circle(0, 0, ring, $"{NumberText.Plain(2 * ring)} {abbreviation} across", ("line", new { color = Look.Grey, dash = "dash", width = 2 })));
        }

        var groups = panel.Groups.Select(g => (Group: g, Look: GroupLooks[Array.IndexOf(groupNames, g.Name)])).ToArray();
        traces.AddRange(groups.SelectMany(g => g.Group.Circles.Select((c, i) => Circle(c.At.Right.As(unit), c.At.Up.As(unit), Check.Positive(c.Radius.As(unit), abbreviation, "radius"), c.Name,
            ("line", new { color = g.Look.Colour, dash = CircleDashes[i % CircleDashes.Length], width = 2 })))));
        traces.AddRange(groups.SelectMany(g => Centre(g.Group, g.Look)));
        traces.AddRange(groups.SelectMany(g => Points(g.Group.Name, g.Group.Marks.Where(m => !m.Called), g.Look)));
        traces.AddRange(Points("called flyer", panel.Groups.SelectMany(g => g.Marks).Where(m => m.Called), CalledLook));
        foreach (var trace in traces)
        {
            trace.SetProperty("xaxis", $"x{number}");
            trace.SetProperty("yaxis", $"y{number}");
        }

        return traces;
    }

    IEnumerable<Trace> Centre(FaceGroup group, Look.Style look)
    {
        if (group.Centre is not { } centre)
        {
            yield break;
        }

        string name = $"centre of {group.Name}, {NumberText.Percent(centre.Level)}";
        double x = centre.At.Right.As(unit), y = centre.At.Up.As(unit);
        yield return Circle(x, y, Check.Positive(centre.Radius.As(unit), abbreviation, "radius"), name,
            ("fill", "toself"), ("fillcolor", look.Faint), ("line", new { color = look.Colour, width = 1.5 }));
        yield return Look.Scatter([x], [y], name, ("mode", "markers"), ("hoverinfo", "skip"), ("showlegend", false),
            ("marker", new { symbol = "cross-thin", size = 16, color = look.Colour, line = new { color = look.Colour, width = 3 } }));
    }

    IEnumerable<Trace> Points(string name, IEnumerable<FaceMark> struck, Look.Style look)
    {
        FaceMark[] all = [.. struck];
        if (all.Length == 0)
        {
            yield break;
        }

        yield return Look.Scatter([.. all.Select(m => m.At.Right.As(unit))], [.. all.Select(m => m.At.Up.As(unit))], name,
            ("mode", nameArrows ? "markers+text" : "markers"),
            ("marker", new { color = look.Colour, symbol = look.Symbol, size = marks > 200 ? 4 : 9, opacity = marks > 200 ? 0.5 : 0.9 }),
            ("text", all.Select(m => Markup.Label(m.Arrow ?? ""))),
            ("textposition", "top right"),
            ("hovertemplate", $"right %{{x:.3~g}} {abbreviation}, up %{{y:.3~g}} {abbreviation}<extra>{Markup.Label(name)} %{{text}}</extra>"), ("showlegend", inLegend.Add(name)));
    }

    Trace Circle(double x, double y, double radius, string name, params (string Member, object Value)[] more)
    {
        const int sides = 60;   // round to the eye: the sagitta is 0.14 % of the radius
        var angles = Enumerable.Range(0, sides + 1).Select(i => 2 * Math.PI * i / sides).ToArray();
        return Look.Scatter([.. angles.Select(a => x + (radius * Math.Cos(a)))], [.. angles.Select(a => y + (radius * Math.Sin(a)))], name,
            [("mode", "lines"), ("hoverinfo", "skip"), ("showlegend", inLegend.Add(name)), .. more]);
    }
}
