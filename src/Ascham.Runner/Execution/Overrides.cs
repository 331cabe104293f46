namespace Ascham.Runner.Execution;

using Ascham.Runner.Documents;

/// <summary>Values given with <c>--set</c>, put into a notebook as a cell of assignments after its parameter cell.</summary>
/// <remarks>Assignments, not declarations: the type declared in the notebook stays, and a wrong type is a compile error.</remarks>
sealed class Overrides
{
    readonly List<(string Name, string Value)> values;
    readonly string callerFolder;

    Overrides(List<(string, string)> values, string callerFolder)
    {
        this.values = values;
        this.callerFolder = callerFolder;
    }

    /// <param name="assignments">Texts <c>name=value</c>; of a name given twice the last one counts.</param>
    /// <param name="callerFolder">What relative file names are relative to.</param>
    public static Overrides Parse(IEnumerable<string> assignments, string callerFolder)
    {
        var values = new List<(string Name, string Value)>();
        foreach (string text in assignments)
        {
            int equals = text.IndexOf('=', StringComparison.Ordinal);
            if (equals <= 0)
            {
                throw new UsageException($"--set {text}: name=value is expected.");
            }

            string name = text[..equals].Trim();
            values.RemoveAll(v => v.Name == name);
            values.Add((name, text[(equals + 1)..]));
        }

        return new(values, callerFolder);
    }

    /// <summary>Injects the values.</summary>
    /// <exception cref="UsageException">The notebook has no such parameter, or a value is not of its type.</exception>
    public void Apply(Ipynb notebook)
    {
        if (values.Count == 0)
        {
            return;
        }

        if (notebook.ParameterCell is not { } cell)
        {
            throw new UsageException($"{notebook.Name} has no parameters, so --set {values[0].Name} has nothing to set.");
        }

        var known = Parameter.Read(cell.Source);
        notebook.Inject(cell, string.Join('\n', values.Select(v => Assignment(notebook.Name, known, v.Name, v.Value))));
    }

    string Assignment(string notebook, IReadOnlyList<Parameter> known, string name, string value)
    {
        var parameter = known.FirstOrDefault(p => p.Name == name)
            ?? throw new UsageException($"{notebook} has no parameter '{name}'; it has: {string.Join(", ", known.Select(p => p.Name))}.");
        return $"{name} = {parameter.Literal(value, callerFolder)};";
    }
}
