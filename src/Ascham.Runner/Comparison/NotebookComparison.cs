namespace Ascham.Runner.Comparison;

using System.Text.Json.Nodes;
using Ascham.Runner.Documents;
using Ascham.Runner.Execution;

/// <summary>Compares a notebook that was run with the committed one: text and answers, never pictures.</summary>
sealed class NotebookComparison(Tolerance tolerance)
{
    public IEnumerable<Difference> Compare(Ipynb committed, Ipynb run)
    {
        var old = Counted(committed);
        var now = Counted(run);
        if (old.Count != now.Count)
        {
            return [new("the notebook", $"{old.Count} code cells", $"{now.Count} code cells")];
        }

        return old.Zip(now).SelectMany(pair => Compare(pair.First, pair.Second));
    }

    /// <summary>Compares declared answers by name; their order does not matter.</summary>
    public IEnumerable<Difference> Compare(AnswerCollection committed, AnswerCollection run)
    {
        var old = ByName(committed);
        var now = ByName(run);
        foreach (string name in old.Keys.Union(now.Keys))
        {
            string before = old.GetValueOrDefault(name, ""), after = now.GetValueOrDefault(name, "");
            if (!tolerance.Same(before, after))
            {
                yield return new($"answer {name}", before, after);
            }
        }
    }

    IEnumerable<Difference> Compare(Cell old, Cell now)
    {
        if (old.Source.ReplaceLineEndings("\n") != now.Source.ReplaceLineEndings("\n"))
        {
            return [new($"cell {old.Number}, code", old.Source, now.Source)];
        }

        var before = Kept(old);
        var after = Kept(now);
        return Enumerable.Range(0, Math.Max(before.Count, after.Count)).SelectMany(i =>
            Compare($"cell {old.Number}, output {i + 1}", before.ElementAtOrDefault(i) ?? Nothing, after.ElementAtOrDefault(i) ?? Nothing));
    }

    IEnumerable<Difference> Compare(string where, IReadOnlyDictionary<string, string> old, IReadOnlyDictionary<string, string> now)
    {
        foreach (string form in old.Keys.Union(now.Keys))
        {
            bool was = old.TryGetValue(form, out string? before), @is = now.TryGetValue(form, out string? after);
            if (was != @is)
            {
                yield return new($"{where} ({form})", was ? Shown(form, before!) : "", @is ? Shown(form, after!) : "");
            }
            else if (!tolerance.Same(before!, after!))
            {
                yield return new($"{where} ({form})", before!, after!);
            }
        }
    }

    static readonly IReadOnlyDictionary<string, string> Nothing = new Dictionary<string, string>();

    static string Shown(string form, string text) => text.Length > 0 ? text : $"({form})";

    // What --set put in is not part of the committed notebook.
    static List<Cell> Counted(Ipynb notebook) => [.. notebook.CodeCells.Where(c => !c.IsInjected)];

    static List<IReadOnlyDictionary<string, string>> Kept(Cell cell) =>
        [.. cell.Outputs.Select(o => CommittedForm.Of(o)).OfType<JsonObject>().Select(CommittedForm.Texts)];

    static Dictionary<string, string> ByName(AnswerCollection answers) => answers.All.ToDictionary(
        a => a.Name,
        a => string.Join('\n', a.Json.Where(p => p.Key != "name").OrderBy(p => p.Key, StringComparer.Ordinal).Select(p => $"{p.Key}: {p.Value?.ToJsonString() ?? "null"}")));
}
