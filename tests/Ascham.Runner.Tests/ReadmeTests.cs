namespace Ascham.Runner.Tests;

using System.Text.RegularExpressions;
using Ascham.Sights;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;
using UnitsNet;
using Xunit;

/// <summary>The README's sample is a test: it compiles, runs, and prints what the README says.</summary>
public partial class ReadmeTests
{
    [Fact]
    public async Task The_sample_prints_what_the_readme_says()
    {
        string readme = (await File.ReadAllTextAsync(Ascham.Tests.House.Path("README.md"), TestContext.Current.CancellationToken)).ReplaceLineEndings("\n");
        string code = Sample().Match(readme).Groups[1].Value, expected = Output().Match(readme).Groups[1].Value;
        var options = ScriptOptions.Default.WithReferences(typeof(SightModel).Assembly, typeof(Length).Assembly).WithImports("System");

        var console = Console.Out;
        var printed = new StringWriter { NewLine = "\n" };
        Console.SetOut(printed);
        try
        {
            await CSharpScript.RunAsync(code, options, cancellationToken: TestContext.Current.CancellationToken);
        }
        finally
        {
            Console.SetOut(console);
        }

        Assert.Equal(expected, printed.ToString());
    }

    [GeneratedRegex("```csharp\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Sample();

    [GeneratedRegex("```text\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Output();
}
