namespace Ascham.Runner.Commands;

using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;

/// <summary>Which notebooks, found where.</summary>
class ChoiceSettings : CommandSettings
{
    [CommandOption("--notebooks <FOLDER>")]
    [Description("Folder of the notebooks. Without it: the nearest folder [italic]notebooks[/], from here upwards.")]
    public string? Notebooks { get; init; }
}

/// <summary>Which notebooks, and how they are run.</summary>
class NotebookSettings : ChoiceSettings
{
    [CommandArgument(0, "[names]")]
    [Description("Notebooks by name, by the beginning of a name (01), or as a path to a file. Without any: all of them.")]
    public string[] Names { get; init; } = [];

    [CommandOption("--timeout <SECONDS>")]
    [Description("Longest time for one cell.")]
    [DefaultValue(300.0)]
    public double Timeout { get; init; } = 300;

    [CommandOption("--trace")]
    [Description("Show the exception in full when a cell fails.")]
    public bool Trace { get; init; }

    public override ValidationResult Validate() =>
        Timeout is > 0 and < 1e6 ? ValidationResult.Success() : ValidationResult.Error("--timeout takes a positive number of seconds.");
}

sealed class RunSettings : NotebookSettings
{
    [CommandOption("--set <NAME=VALUE>")]
    [Description("Value for a parameter of the notebook; may be given several times. A file name is relative to the current folder.")]
    public string[] Set { get; init; } = [];

    [CommandOption("--out <FOLDER>")]
    [Description("Where the reports go. Without it: the folder [italic]reports[/] beside the notebooks' folder.")]
    public string? Out { get; init; }
}

sealed class CheckSettings : NotebookSettings
{
    [CommandOption("--relative <NUMBER>")]
    [Description("Two numbers agree when they differ by no more than absolute + relative x the larger.")]
    [DefaultValue(1e-6)]
    public double Relative { get; init; } = 1e-6;

    [CommandOption("--absolute <NUMBER>")]
    [Description("See --relative; in the number's own unit.")]
    [DefaultValue(1e-9)]
    public double Absolute { get; init; } = 1e-9;

    [CommandOption("--executed <FOLDER>")]
    [Description("Compare notebooks of the same names that something else has run and saved there, instead of running them.")]
    public string? Executed { get; init; }

    public override ValidationResult Validate() =>
        Relative >= 0 && Absolute >= 0 ? base.Validate() : ValidationResult.Error("--relative and --absolute take numbers that are not negative.");
}
