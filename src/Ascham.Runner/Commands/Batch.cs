namespace Ascham.Runner.Commands;

using System.Diagnostics;
using System.Globalization;
using Ascham.Runner.Documents;
using Ascham.Runner.Execution;

/// <summary>The notebooks of one command: chosen, run one after the other in one process, counted.</summary>
sealed class Batch
{
    readonly NotebookSettings settings;
    readonly Screen screen;

    public Batch(NotebookSettings settings, Screen screen)
    {
        this.settings = settings;
        this.screen = screen;
        Caller = Directory.GetCurrentDirectory();
        Folder = NotebookFolder.Find(Caller, settings.Notebooks);
        // A word with an equals sign after the names is another value: --set a=1 b=2.
        var names = settings.Names.Where(n => !n.Contains('=')).ToList();
        Files = Folder.Select(names, Caller);
    }

    public string Caller { get; }

    public NotebookFolder Folder { get; }

    public IReadOnlyList<string> Files { get; }

    /// <summary>Runs notebooks.</summary>
    /// <param name="notebooks">Loaded, with any values injected.</param>
    /// <param name="ended">Does something with each result and gives a word for the closing of its line; throws nothing but usage errors.</param>
    /// <param name="cancellation">Ends the run; nothing is then written for the notebook in hand.</param>
    /// <returns>The results in order; after a cell that did not end in time the rest is missing.</returns>
    public async Task<IReadOnlyList<NotebookResult>> RunAsync(
        IReadOnlyList<Ipynb> notebooks, Func<NotebookResult, string> ended, CancellationToken cancellation)
    {
        var runner = new NotebookRunner(TimeSpan.FromSeconds(settings.Timeout), Caller);
        var results = new List<NotebookResult>();
        foreach (Ipynb notebook in notebooks)
        {
            int cells = notebook.CodeCells.Count(c => !string.IsNullOrWhiteSpace(c.Source));
            var watch = Stopwatch.StartNew();
            screen.Doing($"{notebook.Name}: starting");
            var result = await Uninterrupted(notebook, runner.RunAsync(notebook, cell => screen.Doing($"{notebook.Name}: cell {cell} of {cells}"), cancellation), cancellation);
            results.Add(result);
            Tell(result);
            string word = ended(result);
            screen.Line(string.Create(CultureInfo.InvariantCulture, $"{notebook.Name}: {word}, {watch.Elapsed.TotalSeconds:0.0} s"));
            if (result.Failure is { Runaway: true } && results.Count < notebooks.Count)
            {
                screen.Problem("The cell still runs, so the notebooks after it are not run.");
                break;
            }
        }

        return results;
    }

    /// <summary>Prints the closing line.</summary>
    /// <returns>The exit code.</returns>
    public int Close(int passed)
    {
        int failed = Files.Count - passed;
        screen.Line($"{passed} passed, {failed} failed");
        return failed == 0 ? ExitCode.Passed : ExitCode.Failed;
    }

    static async Task<NotebookResult> Uninterrupted(Ipynb notebook, Task<NotebookResult> run, CancellationToken cancellation)
    {
        try
        {
            return await run;
        }
        catch (OperationCanceledException e) when (cancellation.IsCancellationRequested)
        {
            throw new OperationCanceledException($"Interrupted: nothing was written for {notebook.Name}.", e, cancellation);
        }
    }

    void Tell(NotebookResult result)
    {
        if (result.Failure is not { } failure)
        {
            return;
        }

        screen.Problem($"{Path.GetRelativePath(Caller, result.Notebook.FullPath)}, {failure}");
        if (settings.Trace && failure.Trace is not null)
        {
            screen.Problem(failure.Trace);
        }
    }
}
