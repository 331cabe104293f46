namespace Ascham.Runner.Commands;

using Spectre.Console;

/// <summary>What the user sees while notebooks run: a live line on a terminal, now and then a plain line elsewhere.</summary>
/// <remarks>It keeps the writers it was made with, because a kernel captures the console for as long as it lives.</remarks>
sealed class Screen(TextWriter output, TextWriter error, bool interactive)
{
    static readonly TimeSpan PlainEvery = TimeSpan.FromSeconds(10);
    StatusContext? live;
    DateTime lastPlain = DateTime.UtcNow;

    public static Screen OfConsole() =>
        new(Console.Out, Console.Error, AnsiConsole.Profile.Capabilities.Interactive && !Console.IsOutputRedirected && !Console.IsErrorRedirected);

    public void Line(string text) => Write(output, text);

    public void Problem(string text) => Write(error, text);

    /// <summary>Says what is being done; may show or not.</summary>
    public void Doing(string text)
    {
        if (live is not null)
        {
            live.Status(Markup.Escape(text));
        }
        else if (DateTime.UtcNow - lastPlain > PlainEvery)
        {
            Line(text);
        }
    }

    /// <summary>Runs something under a live line where there is a terminal.</summary>
    public async Task<T> Live<T>(Func<Task<T>> work)
    {
        if (!interactive)
        {
            return await work();
        }

        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(output) });
        return await console.Status().StartAsync("starting", async context =>
        {
            live = context;
            try
            {
                return await work();
            }
            finally
            {
                live = null;
            }
        });
    }

    void Write(TextWriter writer, string text)
    {
        lastPlain = DateTime.UtcNow;
        // On a terminal the live line stands below: clear it first, it is drawn again by itself.
        writer.WriteLine(live is null ? text : "\r\u001b[2K" + text);
    }
}
