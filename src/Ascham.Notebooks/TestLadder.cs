namespace Ascham.Notebooks;

using System.Globalization;
using Ascham.Causes;

/// <summary>Draws what the next tests promise: the share of the doubt each is expected to remove per minute.</summary>
public static class TestLadder
{
    const int RowHeight = 44, MostRows = 12;

    /// <summary>Draws the best tests of a plan.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="rows">Most tests to draw, 1 to 12.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">The plan holds no test, or <paramref name="rows"/> is outside its range.</exception>
    public static Figure Draw(string title, TestPlan plan, int rows = 9)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (rows is < 1 or > MostRows)
        {
            throw new ArgumentException($"rows must be 1 to {MostRows}; it was {rows}.", nameof(rows));
        }

        var best = Check.Some(plan.Tests.Take(rows), MostRows, "tests", "plan");
        double Share(double nats) => plan.Left > 0 ? 100 * nats / plan.Left : 0;
        double[] at = [.. best.Select((_, i) => (double)i)], x = [.. best.Select(t => Share(t.PerMinute))];
        double top = Math.Max(1e-9, x.Max());
        var style = Look.Series[0];
        var trace = Look.Scatter(x, at, "per minute",
            ("mode", "markers"), ("marker", new { color = best.Select(t => t.Test.Arrows > 0 ? Look.Series[1].Colour : style.Colour), symbol = best.Select(t => t.Test.Arrows > 0 ? Look.Series[1].Symbol : style.Symbol), size = 11 }),
            ("error_x", new { type = "data", symmetric = false, array = x.Select(_ => 0.0), arrayminus = x, color = Look.Grey, thickness = 3, width = 0 }),
            ("hovertemplate", "%{x:.2~g} % per minute<extra></extra>"));
        object[] notes = [.. best.Select((t, i) => Said(t, at[i], Share(t.Information)))];
        var names = Look.Axis("", (best.Count - 0.4, -0.75));
        (names["showticklabels"], names["ticks"], names["showgrid"], names["zeroline"], names["tickvals"], names["ticktext"]) = (false, "", false, false, at, best.Select(_ => ""));
        Dictionary<string, object> narrow = [];
        for (int i = 0; i < best.Count; i++)
        {
            narrow[$"annotations.{i}.text"] = Markup.Wrapped(Words(best[i], Share(best[i].Information)), 46);
        }

        (narrow["height"], narrow["yaxis.range"]) = (100 + (88 * best.Count), new[] { best.Count - 0.4, -0.95 });
        var chart = Look.Chart([trace], 100 + (RowHeight * best.Count), narrow,
            ("xaxis", Look.Axis("doubt removed per minute (%)", (-0.01 * top, 1.06 * top))), ("yaxis", names), ("annotations", notes), ("margin", new { l = 16, r = 16, t = 12, b = 16 }));
        return chart.ToFigure(title,
            $"Tests by the share of the doubt they are expected to remove per minute. {string.Join(" ", best.Select(t => $"{Words(t, Share(t.Information))}, {NumberText.Plain(Share(t.PerMinute))} % per minute."))}",
            Table.From(best, ("test", t => t.Test.What, 0), ("key", t => t.Test.Key, 0), ("minutes", t => t.Test.Minutes, 1), ("arrows", t => t.Test.Arrows, 0), ("information (nats)", t => t.Information, 3),
                ("of the doubt (%)", t => Share(t.Information), 0), ("per minute (nats)", t => t.PerMinute, 4), ("per arrow (nats)", t => t.Test.Arrows > 0 ? NumberText.Fixed(t.PerArrow, 4) : "needs none", 4)),
            string.Create(CultureInfo.InvariantCulture, $"{plan.Left:0.00} nats are wanting; 0.69 would halve two equal suspects. Squares need arrows, circles none. What a test costs is a common estimate; expected, not promised."));
    }

    static Dictionary<string, object> Said(RankedTest test, double at, double share)
    {
        var note = Look.Note(Markup.Label(Words(test, share)), 0, at - 0.2, "left", "bottom");
        note["xref"] = "paper";
        return note;
    }

    static string Words(RankedTest test, double share) =>
        string.Create(CultureInfo.InvariantCulture, $"{test.Test.What}: {share:0} % of the doubt in {test.Test.Minutes:0.#} min{(test.Test.Arrows > 0 ? $", {test.Test.Arrows} arrows" : "")}");
}
