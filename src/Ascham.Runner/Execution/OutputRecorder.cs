namespace Ascham.Runner.Execution;

using System.Text.Json;
using System.Text.Json.Nodes;
using Ascham.Runner.Documents;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;

/// <summary>Turns the kernel's events into outputs of the notebook format, without this machine's paths.</summary>
sealed class OutputRecorder(MachinePaths paths)
{
    // Displays that a later event, perhaps of a later cell, may replace.
    readonly Dictionary<string, JsonObject> displays = [];

    /// <summary>The outputs of one cell, in order.</summary>
    public List<JsonObject> Record(IEnumerable<KernelEvent> events, int executionCount)
    {
        var outputs = new List<JsonObject>();
        foreach (KernelEvent e in events)
        {
            switch (e)
            {
                case StandardOutputValueProduced text:
                    AppendStream(outputs, "stdout", Text(text));
                    break;
                case StandardErrorValueProduced text:
                    AppendStream(outputs, "stderr", Text(text));
                    break;
                case DisplayedValueUpdated update when displays.TryGetValue(update.ValueId, out JsonObject? shown):
                    shown["data"] = Bundle(update.FormattedValues);
                    break;
                case DisplayedValueProduced display:
                    outputs.Add(displays[display.ValueId] = Output("display_data", display, null));
                    break;
                case ReturnValueProduced value:
                    outputs.Add(Output("execute_result", value, executionCount));
                    break;
                default:
                    break;
            }
        }

        return [.. outputs.Where(o => o["data"] is not JsonObject { Count: 0 })];
    }

    public JsonObject Error(Failure failure) => new()
    {
        ["ename"] = "Error",
        ["evalue"] = paths.Strip(failure.Message),
        ["output_type"] = "error",
        ["traceback"] = new JsonArray((JsonNode)paths.Strip(failure.ToString())),
    };

    JsonObject Output(string kind, DisplayEvent display, int? executionCount)
    {
        var output = new JsonObject { ["data"] = Bundle(display.FormattedValues) };
        if (executionCount is not null)
        {
            output["execution_count"] = executionCount;
        }

        output["metadata"] = new JsonObject();
        output["output_type"] = kind;
        return output;
    }

    JsonObject Bundle(IEnumerable<FormattedValue> values)
    {
        var data = new JsonObject();
        foreach (FormattedValue value in values.Where(v => !v.SuppressDisplay).OrderBy(v => v.MimeType, StringComparer.Ordinal))
        {
            data[value.MimeType] = Form(value.MimeType, value.Value);
        }

        return data;
    }

    JsonNode Form(string mime, string value)
    {
        if (MimeTypes.IsJson(mime))
        {
            return JsonNode.Parse(value, documentOptions: new JsonDocumentOptions { AllowDuplicateProperties = false })!;
        }

        return mime.StartsWith("image/", StringComparison.Ordinal) && mime != MimeTypes.Svg
            ? value
            : MultilineText.Lines(paths.Strip(value));
    }

    string Text(DisplayEvent text) =>
        paths.Strip(string.Concat(text.FormattedValues.Where(v => v.MimeType == MimeTypes.Plain).Select(v => v.Value)));

    static void AppendStream(List<JsonObject> outputs, string name, string text)
    {
        if (outputs.LastOrDefault() is { } last && (string?)last["name"] == name)
        {
            last["text"] = MultilineText.Lines(MultilineText.Read(last["text"]) + text);
            return;
        }

        outputs.Add(new() { ["name"] = name, ["output_type"] = "stream", ["text"] = MultilineText.Lines(text) });
    }
}
