namespace Ascham.Runner.Execution;

using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using Ascham.Runner.Documents;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Events;

/// <summary>Turns what the kernel says of a failed cell into a place and a sentence.</summary>
static partial class FailureReader
{
    /// <summary>The file name a cell is compiled under; traces and compile errors carry it.</summary>
    public static string FileNameOf(Cell cell) => $"cell{cell.Number}{(cell.IsInjected ? "-set" : "")}.csx";

    public static Failure Read(CommandFailed failed, Cell cell)
    {
        string file = FileNameOf(cell);
        if (failed.Exception is null or CodeSubmissionCompilationErrorException)
        {
            return Compilation(failed.Message, cell);
        }

        var exception = Innermost(failed.Exception);
        string trace = exception.ToString();
        // The first frame of this cell is the deepest one: the line that made the failing call.
        var frame = Frame().Matches(trace).FirstOrDefault(m => m.Groups["file"].Value == file);
        return new(cell.Number, cell.IsInjected, Number(frame), Sentence(exception), trace);
    }

    static Failure Compilation(string message, Cell cell)
    {
        var errors = CompileError().Matches(message);
        if (errors.Count == 0)
        {
            return new(cell.Number, cell.IsInjected, null, message.Trim());
        }

        var more = errors.Skip(1).Select(e => $"line {e.Groups["line"].Value}: {e.Groups["text"].Value.Trim()}");
        return new(cell.Number, cell.IsInjected, Number(errors[0]), string.Join("\n", [errors[0].Groups["text"].Value.Trim(), .. more]));
    }

    /// <summary>What a user is told: an exception that speaks of the user's input speaks for itself, another one is named.</summary>
    static string Sentence(Exception e)
    {
        string line = ParameterSuffix().Replace(e.Message.Split('\n')[0].Trim(), "");
        bool speaksForItself = e is ArgumentException or FormatException or IOException or InvalidDataException or UnauthorizedAccessException
            || e.GetType().Assembly.GetName().Name?.StartsWith("Ascham", StringComparison.Ordinal) == true;
        return speaksForItself && line.Length > 0 ? line : $"{e.GetType().Name}: {line}";
    }

    static Exception Innermost(Exception e) =>
        e is TargetInvocationException or TypeInitializationException or AggregateException { InnerExceptions.Count: 1 } && e.InnerException is { } inner
            ? Innermost(inner)
            : e;

    static int? Number(Match? match) =>
        match is { Success: true } ? int.Parse(match.Groups["line"].Value, CultureInfo.InvariantCulture) : null;

    [GeneratedRegex(@" in \S*?(?<file>cell\d+(?:-set)?\.csx):line (?<line>\d+)")]
    private static partial Regex Frame();

    [GeneratedRegex(@"\((?<line>\d+),\d+\): error (?<text>[A-Z]+\d+: [^\r\n]*)")]
    private static partial Regex CompileError();

    [GeneratedRegex(@" \(Parameter '[^']*'\)$")]
    private static partial Regex ParameterSuffix();
}
