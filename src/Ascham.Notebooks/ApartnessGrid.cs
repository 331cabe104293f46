namespace Ascham.Notebooks;

using System.Globalization;
using Ascham.Causes;

/// <summary>Draws which causes the evidence tells apart: if the cause of the row were true, the odds it would be expected to gain on that of the column.</summary>
public static class ApartnessGrid
{
    const int Cell = 46, Most = 7;
    const double Enough = 3, Plenty = 20; // odds

    /// <summary>Draws the chart.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="pairs">Pairs of causes, from <see cref="Apartness.Of"/>; up to 7 causes.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There is no pair, or too many causes.</exception>
    public static Figure Draw(string title, IEnumerable<Apartness> pairs)
    {
        var all = Check.Some(pairs, Most * Most, "pairs", nameof(pairs));
        Cause[] rows = [.. all.Select(p => p.True).Distinct()];
        Cause?[] columns = [.. rows.Select(r => (Cause?)r).Concat(all.Select(p => p.Rival)).Distinct().OrderBy(c => c is null)];
        List<object> shapes = [];
        List<double> x = [], y = [];
        List<string> texts = [];
        foreach (Apartness pair in all)
        {
            int column = Array.IndexOf(columns, pair.Rival), row = Array.IndexOf(rows, pair.True);
            double strength = Math.Clamp(Math.Log(Math.Max(1, pair.Odds)) / Math.Log(Plenty), 0, 1);
            shapes.Add(new
            {
                type = "rect",
                x0 = column - 0.47,
                x1 = column + 0.47,
                y0 = row - 0.46,
                y1 = row + 0.46,
                layer = "below",
                fillcolor = string.Create(CultureInfo.InvariantCulture, $"rgba(0,114,178,{0.04 + (0.4 * strength):0.###})"),
                line = new { color = pair.Odds < Enough ? Look.Series[1].Colour : Look.FaintGrey, width = pair.Odds < Enough ? 2.5 : 1 },
            });
            (x, y) = ([.. x, column], [.. y, row]);
            texts.Add(Odds(pair.Odds)[..^4]);
        }

        var trace = Look.Scatter(x, y, "odds", ("mode", "markers+text"), ("marker", new { color = "rgba(0,0,0,0)", size = 2 }), ("text", texts), ("textposition", "middle center"), ("hoverinfo", "skip"));
        var down = Look.Axis("if this is true", (rows.Length - 0.5, -0.5));
        var across = Look.Axis("odds gained on this, to 1", (-0.5, columns.Length - 0.5));
        (down["tickvals"], down["ticktext"], down["showgrid"], down["zeroline"]) = (Enumerable.Range(0, rows.Length), rows.Select(r => Markup.Wrapped(r.Name(), 14)), false, false);
        (across["tickvals"], across["ticktext"], across["showgrid"], across["zeroline"], across["tickangle"]) = (Enumerable.Range(0, columns.Length), columns.Select(c => Markup.Wrapped(NameOf(c), 12)), false, false, 0);
        var chart = Look.Chart([trace], 130 + (Cell * rows.Length), new() { ["xaxis.tickangle"] = -60, ["height"] = 220 + (Cell * rows.Length), ["yaxis.title.text"] = "" },
            ("xaxis", across), ("yaxis", down), ("shapes", shapes), ("margin", new { l = 16, r = 16, t = 16, b = 16 }));
        Apartness[] confused = [.. all.Where(p => p.Odds < Enough && p.Rival is not null)];
        return chart.ToFigure(title,
            "Odds that evidence like this would be expected to give for one cause against another. " + string.Join(" ", all.Select(p => $"{p.True.Name()} against {NameOf(p.Rival)}: {Odds(p.Odds)}.")),
            Table.From(all, ("if this is true", p => p.True.Name(), 0), ("against", p => NameOf(p.Rival), 0), ("odds gained", p => Odds(p.Odds), 0)),
            $"Odds below {Enough} to 1 (outlined) tell nothing: "
            + (confused.Length == 0 ? "no two causes here are left confused." : $"{confused.Length} {(confused.Length == 1 ? "pair is" : "pairs are")} left confused.")
            + " Odds below 1 mean that such a case would rather be taken for the other. Beliefs before the evidence, and signs that were looked for, come on top.");
    }

    static string NameOf(Cause? cause) => cause is { } c ? c.Name() : "nothing";

    static string Odds(double odds) => odds switch
    {
        >= 999.5 => ">999 : 1",
        >= 9.95 => string.Create(CultureInfo.InvariantCulture, $"{odds:0} : 1"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{odds:0.0} : 1"),
    };
}
