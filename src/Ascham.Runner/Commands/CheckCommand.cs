namespace Ascham.Runner.Commands;

using Ascham.Runner.Comparison;
using Ascham.Runner.Documents;
using Ascham.Runner.Execution;
using Spectre.Console.Cli;

/// <summary>Runs notebooks and compares their text and answers with the committed ones.</summary>
sealed class CheckCommand(Screen screen) : AsyncCommand<CheckSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, CheckSettings settings, CancellationToken cancellationToken)
    {
        var batch = new Batch(settings, screen);
        var tolerance = new Tolerance(settings.Relative, settings.Absolute);
        if (settings.Executed is { } folder)
        {
            string executed = Path.GetFullPath(folder, batch.Caller);
            return batch.Close(batch.Files.Count(file => Same(file, Path.Combine(executed, Path.GetFileName(file)), tolerance)));
        }

        var notebooks = batch.Files.Select(Ipynb.Load).ToList();
        int passed = 0;
        await screen.Live(() => batch.RunAsync(notebooks, result =>
        {
            bool same = result.Passed && Same(result.Notebook.FullPath, result, tolerance);
            passed += same ? 1 : 0;
            return same ? "as committed" : result.Passed ? "differs" : "failed";
        }, cancellationToken));
        return batch.Close(passed);
    }

    bool Same(string file, string executed, Tolerance tolerance)
    {
        if (!File.Exists(executed))
        {
            screen.Problem($"{executed} does not exist.");
            return false;
        }

        var notebook = Ipynb.Load(executed);
        bool same = Same(file, new NotebookResult(notebook, AnswerCollection.Of(notebook), null), tolerance);
        screen.Line($"{notebook.Name}: {(same ? "as committed" : "differs")}");
        return same;
    }

    bool Same(string file, NotebookResult result, Tolerance tolerance)
    {
        var comparison = new NotebookComparison(tolerance);
        var committed = Ipynb.Load(file);
        var differences = comparison.Compare(committed, result.Notebook).ToList();
        string answers = AcceptCommand.AnswersFile(file);
        if (File.Exists(answers))
        {
            differences.AddRange(comparison.Compare(AnswerCollection.Load(answers), result.Answers));
        }

        foreach (Difference difference in differences)
        {
            screen.Problem($"{committed.Name}, {difference.Where}:");
            foreach (string line in difference.Lines(tolerance))
            {
                screen.Problem("  " + line);
            }
        }

        if (differences.Count > 0 && committed.CodeCells.All(c => !c.Outputs.Any()))
        {
            screen.Problem($"{committed.Name} was committed without outputs: ascham accept {committed.Name} writes them.");
        }

        return differences.Count == 0;
    }
}
