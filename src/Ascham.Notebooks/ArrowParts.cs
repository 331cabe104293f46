namespace Ascham.Notebooks;

using Ascham.Arrows;
using Plotly.NET;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Draws an arrow part by part, to scale along its length, with what each part does to the balance.</summary>
/// <remarks>Each part moves the balance by m (x - L/2)/(M L); the contributions add up to front of centre.</remarks>
public static class ArrowParts
{
    const int MostParts = 20;

    /// <summary>Draws the parts below one another.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="build">The arrow.</param>
    /// <param name="pressure">Where the centre of pressure may lie, from the bottom of the nock slot; <see langword="null"/> when not known.</param>
    /// <param name="lengthIn">Unit of places.</param>
    /// <param name="massIn">Unit of masses.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There are more than 20 parts.</exception>
    public static Figure Draw(string title, ArrowBuild build, (Length Low, Length High)? pressure, LengthUnit lengthIn, MassUnit massIn)
    {
        ArgumentNullException.ThrowIfNull(build);
        string unit = NumberText.Unit(lengthIn), mass = NumberText.Unit(massIn);
        Row[] rows = [.. Check.Some(build.Parts, MostParts, "parts").OrderByDescending(p => p.Centre.Meters).Select((p, i) => new Row(p, i, Pull(build, p), p.From.As(lengthIn), p.To.As(lengthIn)))];
        double middle = 0.5 * build.Length.As(lengthIn), balance = build.BalancePoint.As(lengthIn), total = build.TotalLength.As(lengthIn);
        double low = rows.Min(r => r.From) - 0.03 * total, high = rows.Max(r => r.To) + 0.03 * total;

        string Place(double at) => NumberText.Fixed(at, lengthIn == LengthUnit.Inch ? 1 : 0);   // the table has all digits
        List<Trace> traces = [];
        foreach (var (style, name, some) in ((Look.Style, string, Row[])[])
            [(Look.Series[1], "ahead of the middle", [.. rows.Where(r => r.Pull >= 0)]), (Look.Series[0], "behind the middle", [.. rows.Where(r => r.Pull < 0)])])
        {
            traces.AddRange(some.Select((r, i) => Bar(r, style, name, i == 0, total, mass)));
        }

        traces.AddRange(rows.Select(r => Said(r, total, middle)));
        traces.Add(Upright(middle, $"middle, {Place(middle)} {unit}", rows.Length, Look.Grey, "dash"));
        traces.Add(Upright(balance, $"balance point, {NumberText.Fixed(balance, lengthIn == LengthUnit.Inch ? 2 : 0)} {unit}", rows.Length, Look.Series[2].Colour, "solid"));
        List<object> bands = [];
        if (pressure is { } p)
        {
            (double from, double to) = (p.Low.As(lengthIn), p.High.As(lengthIn));
            bands.Add(new { type = "rect", xref = "x", yref = "paper", x0 = from, x1 = to, y0 = 0, y1 = 1, fillcolor = Look.Series[3].Faint, line = new { width = 0 }, layer = "below" });
            traces.Add(Look.Scatter([0.5 * (from + to)], [double.NaN], $"centre of pressure, {Place(from)} to {Place(to)} {unit}",
                ("mode", "markers"), ("marker", new { color = Look.Series[3].Colour, symbol = "square", size = 12 })));
        }

        var across = Look.Axis($"from the bottom of the nock slot ({unit})", (low, high));
        var down = Look.Axis("", (rows.Length - 0.4, -0.6));
        (down["tickvals"], down["ticktext"], down["showgrid"], down["zeroline"]) = (rows.Select(r => r.Place), rows.Select(r => $"{Markup.Label(r.Part.Name)}<br>{r.Mass(massIn)} {mass}"), false, false);
        var chart = Look.Chart(traces, 150 + 44 * rows.Length, new() { ["margin.t"] = 150, ["height"] = 240 + 44 * rows.Length },
            ("xaxis", across), ("yaxis", down), ("showlegend", true), ("legend", Look.LegendOnTop), ("shapes", bands), ("margin", new { l = 16, r = 16, t = 76, b = 16 }));
        return chart.ToFigure(title, InWords(build, rows, lengthIn, massIn), TableOf(build, rows, lengthIn, massIn),
            "The numbers beside the bars say how many per cent each part moves the balance ahead of the middle; they add up to front of centre"
            + (build.MassDifference is null && build.BalanceDifference is null ? "." : " as the parts give it; what scale and knife edge say besides is in the table."));
    }

    static double Pull(ArrowBuild build, ArrowPart part) => 100 * (part.Mass / build.ComputedMass) * ((part.Centre / build.Length) - 0.5);

    static Trace Bar(Row r, Look.Style style, string name, bool named, double total, string mass)
    {
        double half = r.Part.Kind == PartKind.Shaft ? 0.12 : 0.28, least = 0.004 * total;   // a small part must still be seen
        (double from, double to) = r.To - r.From < 2 * least ? (0.5 * (r.From + r.To) - least, 0.5 * (r.From + r.To) + least) : (r.From, r.To);
        return Look.Scatter([from, to, to, from, from], [r.Place - half, r.Place - half, r.Place + half, r.Place + half, r.Place - half], name,
            ("mode", "lines"), ("fill", "toself"), ("fillcolor", style.Colour), ("line", new { color = style.Colour, width = 1 }), ("legendgroup", name), ("showlegend", named),
            ("hoverinfo", "text"), ("text", $"{Markup.Label(r.Part.Name)}: {r.Mass(r.Part.Mass.Unit)} {NumberText.Unit(r.Part.Mass.Unit)}, {r.PullText} %"));
    }

    static Trace Said(Row r, double total, double middle)
    {
        bool front = r.Part.Kind != PartKind.Shaft && 0.5 * (r.From + r.To) > middle;
        double room = 0.012 * total, place = r.Part.Kind == PartKind.Shaft ? middle - 0.02 * total : front ? r.From - room : r.To + room;
        return Look.Scatter([place], [r.Part.Kind == PartKind.Shaft ? r.Place - 0.32 : r.Place], r.Part.Name, ("mode", "text"), ("text", new[] { r.PullText }),
            ("textposition", front || r.Part.Kind == PartKind.Shaft ? "middle left" : "middle right"), ("hoverinfo", "skip"), ("showlegend", false));
    }

    static Trace Upright(double at, string name, int rows, string colour, string dash) =>
        Look.Scatter([at, at], [-0.6, rows - 0.4], name, ("mode", "lines"), ("line", new { color = colour, dash, width = 2.5 }), ("hoverinfo", "skip"));

    static string InWords(ArrowBuild build, Row[] rows, LengthUnit lengthIn, MassUnit massIn) => FormattableString.Invariant(
        $"The arrow part by part. It weighs {NumberText.Plain(build.Mass.As(massIn))} {NumberText.Unit(massIn)} and balances {NumberText.Plain(build.BalancePoint.As(lengthIn))} {NumberText.Unit(lengthIn)} from the nock slot, {build.FrontOfCentre.Percent:0.0} % front of centre. From the point back: {string.Join(", ", rows.Select(r => $"{r.Part.Name} {r.Mass(massIn)} {NumberText.Unit(massIn)} ({r.PullText} %)"))}.");

    static Table TableOf(ArrowBuild build, Row[] rows, LengthUnit lengthIn, MassUnit massIn)
    {
        string unit = NumberText.Unit(lengthIn), mass = NumberText.Unit(massIn);
        object?[] Line(string name, double? weighs, double? centre, double? pull) =>
            [name, weighs is { } w ? NumberText.Fixed(w, massIn == MassUnit.Grain ? 1 : 2) : "", centre is { } c ? NumberText.Fixed(c, lengthIn == LengthUnit.Inch ? 2 : 1) : "", pull is { } p ? NumberText.Fixed(p, 2) : ""];
        double computed = 100 * (build.ComputedBalance / build.Length - 0.5);
        return Table.From(["part", $"mass ({mass})", $"centre ({unit} from slot)", "moves the balance (%)"],
        [
            .. rows.Select(r => Line(r.Part.Name, r.Part.Mass.As(massIn), r.Part.Centre.As(lengthIn), r.Pull)),
            Line("sum of the parts", build.ComputedMass.As(massIn), build.ComputedBalance.As(lengthIn), computed),
            .. build.MassDifference is null && build.BalanceDifference is null ? Array.Empty<object?[]>() :
            [
                Line("as measured", build.WeighedMass?.As(massIn), build.MeasuredBalance?.As(lengthIn), build.FrontOfCentre.Percent),
                Line("difference", build.MassDifference?.As(massIn), build.BalanceDifference?.As(lengthIn), build.FrontOfCentre.Percent - computed),
            ],
        ]);
    }

    sealed record Row(ArrowPart Part, int Place, double Pull, double From, double To)
    {
        public string PullText => (Pull >= 0 ? "+" : "−") + NumberText.Fixed(Math.Abs(Pull), Math.Abs(Pull) < 0.095 ? 2 : 1);

        public string Mass(MassUnit unit) => NumberText.Fixed(Part.Mass.As(unit), unit == MassUnit.Grain ? 0 : 1);
    }
}
