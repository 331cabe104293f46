namespace Ascham.Runner.Execution;

using System.Globalization;
using Ascham.Runner.Documents;
using Microsoft.DotNet.Interactive.Events;

/// <summary>Runs a notebook from an empty kernel, cell by cell, and writes the outputs into its JSON (not into its file).</summary>
/// <param name="limit">Longest time for one cell.</param>
/// <param name="callerFolder">The user's folder, whose name is kept out of the outputs.</param>
sealed class NotebookRunner(TimeSpan limit, string callerFolder)
{
    readonly ReferenceLines references = new(HostPackages.Load());

    /// <summary>Runs until the end or the first failing cell.</summary>
    /// <param name="notebook">Changed: outputs and execution counts are the new ones; cells after a failure have none.</param>
    /// <param name="cellStarted">Told the place of each code cell among the code cells, counted from 1.</param>
    /// <param name="cancellation">Ends the run between or within cells.</param>
    public async Task<NotebookResult> RunAsync(Ipynb notebook, Action<int>? cellStarted, CancellationToken cancellation)
    {
        string before = Directory.GetCurrentDirectory();
        // As in Jupyter: a notebook's relative paths start at its own folder.
        Directory.SetCurrentDirectory(notebook.Folder);
        CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.CurrentUICulture = CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;
        try
        {
            using var kernel = new NotebookKernel();
            return await RunCells(notebook, kernel, cellStarted, cancellation);
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
        }
    }

    async Task<NotebookResult> RunCells(Ipynb notebook, NotebookKernel kernel, Action<int>? cellStarted, CancellationToken cancellation)
    {
        string root = Path.GetDirectoryName(notebook.Folder) ?? notebook.Folder;
        // A caller inside the root adds nothing: the text must not depend on where in it the command was typed.
        var paths = callerFolder.StartsWith(root + Path.DirectorySeparatorChar, StringComparison.Ordinal) ? new MachinePaths(root) : new MachinePaths(root, callerFolder);
        var recorder = new OutputRecorder(paths);
        var answers = new AnswerCollection();
        foreach (Cell cell in notebook.CodeCells)
        {
            cell.SetOutputs([], null);
        }

        int count = 0;
        var toRun = notebook.CodeCells.Where(c => !string.IsNullOrWhiteSpace(c.Source)).ToList();
        foreach (Cell cell in toRun)
        {
            cellStarted?.Invoke(++count);
            var (events, failure) = await RunCell(kernel, cell, notebook.Folder, cancellation);
            var outputs = recorder.Record(events, count);
            failure ??= answers.Add(outputs) is { } clash ? new(cell.Number, cell.IsInjected, null, clash) : null;
            if (failure is not null)
            {
                failure = failure with { Message = paths.Strip(failure.Message), Trace = failure.Trace is null ? null : paths.Strip(failure.Trace) };
                outputs.Add(recorder.Error(failure));
            }

            cell.SetOutputs(outputs, count);
            if (cell.IsInjected)
            {
                cell.SetSource(paths.Strip(cell.Source));
            }

            if (failure is not null)
            {
                return new(notebook, answers, failure);
            }
        }

        return new(notebook, answers, null);
    }

    async Task<(IReadOnlyList<KernelEvent> Events, Failure? Failure)> RunCell(
        NotebookKernel kernel, Cell cell, string folder, CancellationToken cancellation)
    {
        Failure Failed(int? line, string message) => new(cell.Number, cell.IsInjected, line, message);
        if (cell.Language != "csharp")
        {
            return ([], Failed(null, $"the cell is written in {cell.Language}; the runner runs C# only."));
        }

        var (code, assemblies, problem) = references.Prepare(cell.Source, folder);
        if (problem is { } bad)
        {
            return ([], Failed(bad.Line, bad.Message));
        }

        if (assemblies.Count > 0)
        {
            kernel.AddReferences(assemblies);
        }

        var events = await kernel.RunAsync(code, cell, limit, cancellation);
        if (events is null)
        {
            return ([], Failed(null, $"the cell did not end within {limit.TotalSeconds:0.###} s (--timeout).") with { Runaway = true });
        }

        var failed = events.OfType<CommandFailed>().FirstOrDefault();
        return (events, failed is null ? null : FailureReader.Read(failed, cell));
    }
}
