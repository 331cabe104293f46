namespace Ascham.Runner.Commands;

using Ascham.Runner.Documents;
using Ascham.Runner.Execution;
using Ascham.Runner.Reports;
using Spectre.Console.Cli;

/// <summary>Runs notebooks and writes a page and the declared answers of each, and the index.</summary>
sealed class RunCommand(Screen screen) : AsyncCommand<RunSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, RunSettings settings, CancellationToken cancellationToken)
    {
        var batch = new Batch(settings, screen);
        var values = Overrides.Parse([.. settings.Set, .. settings.Names.Where(n => n.Contains('='))], batch.Caller);
        var notebooks = batch.Files.Select(Ipynb.Load).ToList();
        notebooks.ForEach(values.Apply);
        string reports = Path.GetFullPath(settings.Out ?? Path.Combine(batch.Folder.Root, "reports"), batch.Caller);
        AtomicFile.PrepareFolder(reports);

        var results = await screen.Live(() => batch.RunAsync(notebooks, result => Write(result, reports, settings.Trace), cancellationToken));
        var listed = batch.Folder.Files.Union(batch.Files).Select(file => notebooks.Find(n => n.FullPath == file) ?? Ipynb.Load(file));
        AtomicFile.Write(Path.Combine(reports, "index.html"), IndexPage.Write(listed, reports));
        screen.Line($"Reports: {Path.Combine(Path.GetRelativePath(batch.Caller, reports), "index.html")}");
        return batch.Close(results.Count(r => r.Passed));
    }

    static string Write(NotebookResult result, string reports, bool trace)
    {
        string name = Path.Combine(reports, result.Notebook.Name);
        AtomicFile.Write(name + ".html", Report.Write(result, trace));
        if (result.Passed)
        {
            AtomicFile.Write(name + ".answers.json", result.Answers.ToJson());
        }
        else
        {
            // Answers of an earlier run would pass for answers of this one.
            File.Delete(name + ".answers.json");
        }

        return result.Passed ? "passed" : "failed";
    }
}
