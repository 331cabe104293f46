namespace Ascham.Runner.Execution;

using System.Text.Json;
using System.Text.Json.Nodes;
using Ascham.Runner.Documents;

/// <summary>The answers a notebook declares, gathered from its outputs; names are unique within a notebook.</summary>
sealed class AnswerCollection
{
    readonly List<Answer> answers = [];

    public IReadOnlyList<Answer> All => answers;

    /// <summary>All answers of a notebook that has outputs.</summary>
    public static AnswerCollection Of(Ipynb notebook)
    {
        var collection = new AnswerCollection();
        foreach (Cell cell in notebook.CodeCells)
        {
            collection.Add(cell.Outputs);
        }

        return collection;
    }

    /// <summary>Reads an answers file.</summary>
    /// <exception cref="UsageException">It is not a JSON array of objects.</exception>
    public static AnswerCollection Load(string file)
    {
        try
        {
            var collection = new AnswerCollection();
            collection.answers.AddRange(JsonNode.Parse(File.ReadAllText(file))!.AsArray().Select(a => new Answer(a!.AsObject(), "")));
            return collection;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or NullReferenceException or IOException)
        {
            throw new UsageException($"{file} is not a JSON array of answers.", e);
        }
    }

    /// <summary>Takes in a cell's answers.</summary>
    /// <returns>Null, or one sentence when a name comes again with another content (the same content twice is one answer shown twice).</returns>
    public string? Add(IEnumerable<JsonObject> outputs)
    {
        foreach (Answer answer in outputs.Select(Answer.Of).OfType<Answer>())
        {
            var earlier = answers.Find(a => a.Name == answer.Name);
            if (earlier is null)
            {
                answers.Add(answer);
            }
            else if (!JsonNode.DeepEquals(earlier.Json, answer.Json))
            {
                return $"the answer '{answer.Name}' was already given with another content; names are unique in a notebook.";
            }
        }

        return null;
    }

    /// <summary>The content of the answers file: an array, in the order shown.</summary>
    public string ToJson() => JupyterJson.Write(new JsonArray([.. answers.Select(a => a.Json.DeepClone())]), indent: 2);
}
