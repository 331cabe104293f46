namespace Ascham.Runner.Execution;

/// <summary>Why a notebook stopped, and where.</summary>
/// <param name="Cell">The cell's place in the file, counted from 1.</param>
/// <param name="Injected">True when it was not that cell but the values of <c>--set</c> put in after it.</param>
/// <param name="Line">Line within the cell, counted from 1; null when the kernel names none.</param>
/// <param name="Message">One or a few plain sentences.</param>
/// <param name="Trace">The exception in full; null for a compile error.</param>
/// <param name="Runaway">True when the cell did not end in time: its thread still runs, so no other notebook can run in this process.</param>
sealed record Failure(int Cell, bool Injected, int? Line, string Message, string? Trace = null, bool Runaway = false)
{
    public string Where =>
        (Injected ? "the values given with --set" : $"cell {Cell}") + (Line is null ? "" : $", line {Line}");

    public override string ToString() => $"{Where}: {Message}";
}
