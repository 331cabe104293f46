namespace Ascham.Runner.Commands;

using Ascham.Runner.Documents;
using Ascham.Runner.Execution;
using Ascham.Runner.Reports;
using Spectre.Console.Cli;

/// <summary>Lists the notebooks as questions, with the parameters each takes.</summary>
sealed class ListCommand(Screen screen) : Command<ChoiceSettings>
{
    public override int Execute(CommandContext context, ChoiceSettings settings, CancellationToken cancellationToken)
    {
        var notebooks = NotebookFolder.Find(Directory.GetCurrentDirectory(), settings.Notebooks).Files.Select(Ipynb.Load).ToList();
        int width = notebooks.Max(n => n.Name.Length);
        foreach (Ipynb notebook in notebooks)
        {
            screen.Line($"{notebook.Name.PadRight(width)}  {Report.TitleOf(notebook)}");
            foreach (Parameter parameter in notebook.ParameterCell is { } cell ? Parameter.Read(cell.Source) : [])
            {
                screen.Line($"{new string(' ', width)}    --set {parameter.Name}={parameter.Default}");
            }
        }

        return ExitCode.Passed;
    }
}
