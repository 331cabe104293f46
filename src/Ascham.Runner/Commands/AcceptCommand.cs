namespace Ascham.Runner.Commands;

using System.Text.Json.Nodes;
using Ascham.Runner.Comparison;
using Ascham.Runner.Documents;
using Ascham.Runner.Execution;
using Ascham.Runner.Pictures;
using Spectre.Console.Cli;

/// <summary>Runs notebooks and writes their outputs, with a still picture of each chart, and their answers back beside them.</summary>
sealed class AcceptCommand(Screen screen) : AsyncCommand<NotebookSettings>
{
    /// <summary>Where a notebook's committed answers stand.</summary>
    public static string AnswersFile(string notebook) => Path.ChangeExtension(notebook, ".answers.json");

    public override async Task<int> ExecuteAsync(CommandContext context, NotebookSettings settings, CancellationToken cancellationToken)
    {
        var batch = new Batch(settings, screen);
        var notebooks = batch.Files.Select(Ipynb.Load).ToList();
        var results = await screen.Live(() => batch.RunAsync(notebooks, r => r.Passed ? "passed" : "failed, left as it was", cancellationToken));
        var passed = results.Where(r => r.Passed).ToList();
        // One browser start for all of them: it takes longer than drawing a chart.
        var charts = passed.SelectMany(r => r.Notebook.CodeCells).SelectMany(c => c.Outputs).Select(FigureData.Of).OfType<FigureData>().ToList();
        var pictures = new Queue<string>(Chromium.Draw([.. charts.Select(c => c.Picture)]));
        foreach (NotebookResult result in passed)
        {
            Keep(result.Notebook, pictures);
            AtomicFile.Write(result.Notebook.FullPath, result.Notebook.ToJson());
            WriteAnswers(result);
        }

        return batch.Close(passed.Count);
    }

    static void Keep(Ipynb notebook, Queue<string> pictures)
    {
        foreach (Cell cell in notebook.CodeCells)
        {
            var kept = cell.Outputs.Select(o => CommittedForm.Of(o, FigureData.Of(o) is null ? null : pictures.Dequeue())).OfType<JsonObject>().ToList();
            cell.SetOutputs(kept, (int?)cell.Json["execution_count"]);
        }
    }

    static void WriteAnswers(NotebookResult result)
    {
        string file = AnswersFile(result.Notebook.FullPath);
        if (result.Answers.All.Count > 0)
        {
            AtomicFile.Write(file, result.Answers.ToJson());
        }
        else
        {
            File.Delete(file);
        }
    }
}
