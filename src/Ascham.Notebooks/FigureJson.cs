namespace Ascham.Notebooks;

using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Plotly.NET;

/// <summary>Turns Plotly.NET charts into plotly JSON that is small and the same in every run.</summary>
static class FigureJson
{
    const int DefaultHeight = 420;

    public static string ForPage(GenericChart chart)
    {
        JsonObject figure = Parse(chart);
        if (figure["config"] is not JsonObject { Count: > 0 })
        {
            // Drawing buttons only those that a reader may miss: charts do not zoom on drag, so that a phone can scroll past them.
            figure["config"] = JsonNode.Parse(
                """{"responsive":true,"displaylogo":false,"modeBarButtons":[["zoom2d","pan2d","resetScale2d","toImage"]]}""");
        }

        return figure.ToJsonString();
    }

    public static string ForPicture(GenericChart chart, string title)
    {
        JsonObject figure = Parse(chart), layout = figure["layout"]!.AsObject();
        const double lineHeight = 22;
        string wrapped = Markup.Wrapped(title, 70);
        layout["title"] = new JsonObject
        {
            ["text"] = wrapped,
            ["font"] = new JsonObject { ["size"] = 17 },
            ["x"] = 0.02,
            ["xanchor"] = "left",
            ["yref"] = "container",
            ["y"] = 1,
            ["yanchor"] = "top",
            ["pad"] = new JsonObject { ["t"] = 12 },
        };
        double room = lineHeight * wrapped.Split("<br>").Length + 12;
        layout["margin"] ??= new JsonObject();
        layout["margin"]!["t"] = (layout["margin"]!["t"]?.GetValue<double>() ?? 60) + room;
        double height = (layout["height"]?.GetValue<double>() ?? DefaultHeight) + room;
        layout["height"] = height;
        if (layout["legend"] is JsonObject legend && (string?)legend["yref"] == "container")
        {
            legend["y"] = 1 - (room / height);   // below the title
        }

        layout["font"] ??= new JsonObject();
        layout["font"]!["color"] = "#222222";
        (layout["paper_bgcolor"], layout["plot_bgcolor"]) = ("#ffffff", "#ffffff");
        layout.Remove("meta");
        figure["config"] = new JsonObject { ["staticPlot"] = true };
        return figure.ToJsonString();
    }

    public static int Height(GenericChart chart) => (int)(Parse(chart)["layout"]?["height"]?.GetValue<double>() ?? DefaultHeight);

    static JsonObject Parse(GenericChart chart)
    {
        ArgumentNullException.ThrowIfNull(chart);
        JsonObject whole = JsonNode.Parse(GenericChart.toJson(chart))!.AsObject(), figure = [];
        foreach (string part in (string[])["data", "layout", "config"])
        {
            figure[part] = Rounded(whole[part]) ?? (part == "data" ? new JsonArray() : new JsonObject());
        }

        return figure;
    }

    /// <summary>A copy with numbers rounded to six significant digits, and gaps for what is not a number.</summary>
    static JsonNode? Rounded(JsonNode? node) => node switch
    {
        JsonObject o => new JsonObject(o.Select(member => KeyValuePair.Create(member.Key, Rounded(member.Value)))),
        JsonArray a => new JsonArray([.. a.Select(Rounded)]),
        JsonValue v when v.GetValueKind() == JsonValueKind.Number => Rounded(v.GetValue<double>()),
        JsonValue v when v.GetValueKind() == JsonValueKind.String && v.GetValue<string>() is "NaN" or "Infinity" or "-Infinity" && v.Parent is JsonArray => null,
        _ => node?.DeepClone(),
    };

    static JsonValue Rounded(double value) =>
        JsonValue.Create(double.Parse(value.ToString("G6", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));
}
