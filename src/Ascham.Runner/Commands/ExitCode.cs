namespace Ascham.Runner.Commands;

static class ExitCode
{
    public const int Passed = 0;

    /// <summary>A notebook failed, or is not as committed.</summary>
    public const int Failed = 1;

    /// <summary>Nothing was tried, or nothing could be written: see the sentence printed.</summary>
    public const int Usage = 2;

    /// <summary>The user stopped it (128 + the number of the interrupt signal, as shells have it).</summary>
    public const int Interrupted = 130;
}
