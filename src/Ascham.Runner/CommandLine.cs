namespace Ascham.Runner;

using System.Reflection;
using Ascham.Runner.Commands;
using Spectre.Console.Cli;

/// <summary>The command <c>ascham</c>: its words, and what an error becomes.</summary>
static class CommandLine
{
    /// <returns>The exit code, see <see cref="ExitCode"/>.</returns>
    public static Task<int> RunAsync(string[] arguments, CancellationToken cancellation) =>
        RunAsync(arguments, Screen.OfConsole(), cancellation);

    public static async Task<int> RunAsync(string[] arguments, Screen screen, CancellationToken cancellation)
    {
        var app = new CommandApp();
        app.Configure(configuration =>
        {
            configuration.Settings.Registrar.RegisterInstance(screen);
            Configure(configuration);
        });
        try
        {
            return await app.RunAsync(arguments, cancellation);
        }
        catch (Exception e) when (e is UsageException or CommandAppException)
        {
            screen.Problem($"ascham: {e.Message.TrimEnd()}");
            return ExitCode.Usage;
        }
        catch (OperationCanceledException e)
        {
            screen.Problem(e.Message);
            return ExitCode.Interrupted;
        }
    }

    static void Configure(IConfigurator app)
    {
        app.SetApplicationName("ascham");
        app.SetApplicationVersion(typeof(CommandLine).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "unknown");
        app.PropagateExceptions();
        app.UseStrictParsing();
        app.AddCommand<RunCommand>("run")
            .WithDescription("Run notebooks and write a report of each.")
            .WithExample("run")
            .WithExample("run", "01", "--set", "shots=my-shots.csv", "--set", "confidence=0.95", "--out", "my-reports");
        app.AddCommand<ListCommand>("list").WithDescription("List the notebooks, the question of each and its parameters.");
        app.AddCommand<CheckCommand>("check")
            .WithDescription("Run notebooks and compare their text and answers with the committed ones; pictures are not compared.")
            .WithExample("check", "01");
        app.AddCommand<AcceptCommand>("accept")
            .WithDescription("Run notebooks and write outputs, still pictures of the charts and answers back beside them; needs the program chromium.")
            .WithExample("accept", "01");
    }
}
