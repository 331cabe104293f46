namespace Ascham.Runner.Tests.Execution;

using Ascham.Runner.Documents;
using Ascham.Runner.Execution;
using Xunit;

public sealed class ParameterTests : IDisposable
{
    const string Declarations = """
        // What the reader may change.
        string shots = "../data-demo/shots.csv", target = "6 in";
        double confidence = 0.90;   // two-sided
        var arrows = 6;
        var shift = -1.5;
        bool windy = false;
        decimal price = 1.5m;
        float f = 1f;
        Length distance = 30.Yards;
        """;

    readonly Scratch scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void Declarations_are_read_with_their_types() =>
        Assert.Equal(
            ["shots:string", "target:string", "confidence:double", "arrows:int", "shift:double", "windy:bool", "price:decimal", "f:float", "distance:Length"],
            Parameter.Read(Declarations).Select(p => $"{p.Name}:{p.Type}"));

    [Theory]
    [InlineData("confidence=0.95", "confidence = 0.95;")]
    [InlineData("confidence=1", "confidence = 1;")]
    [InlineData("confidence=5.", "confidence = 5;")]
    [InlineData("arrows=-12", "arrows = -12;")]
    [InlineData("shift=.25", "shift = 0.25;")]
    [InlineData("windy=True", "windy = true;")]
    [InlineData("price=2.50", "price = 2.50m;")]
    [InlineData("f=2.5", "f = 2.5f;")]
    [InlineData("distance=20.Metres", "distance = 20.Metres;")]
    [InlineData("target=8 in", "target = \"8 in\";")]
    [InlineData("target=a=\"b\\", "target = \"a=\\\"b\\\\\";")]
    public void A_value_becomes_an_assignment_of_the_declared_type(string given, string expected) =>
        Assert.Equal(expected, Injected(given));

    [Theory]
    [InlineData("confidence=high", "confidence takes a number.")]
    [InlineData("confidence=NaN", "confidence takes a number.")]
    [InlineData("confidence=1,5e", "confidence takes a number.")]
    [InlineData("arrows=6.5", "arrows takes a whole number.")]
    [InlineData("windy=maybe", "windy takes true or false.")]
    [InlineData("distance=20 metres", "distance takes a C# expression such as 30.Yards.")]
    [InlineData("distance=1; Evil()", "distance takes a C# expression such as 30.Yards.")]
    public void A_value_of_another_type_is_refused_before_anything_runs(string given, string expected) =>
        Assert.Equal($"--set {given}: {expected}", Assert.Throws<UsageException>(() => Injected(given)).Message);

    [Fact]
    public void A_typing_error_in_a_name_lists_the_parameters()
    {
        var error = Assert.Throws<UsageException>(() => Injected("confidance=0.9"));
        Assert.Equal("made-up has no parameter 'confidance'; it has: shots, target, confidence, arrows, shift, windy, price, f, distance.", error.Message);
    }

    [Theory]
    [InlineData("confidence")]
    [InlineData("=3")]
    public void A_text_without_a_name_or_a_value_is_refused(string given) =>
        Assert.Contains("name=value is expected", Assert.Throws<UsageException>(() => Injected(given)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_notebook_without_parameters_says_so() =>
        Assert.Equal(
            "made-up has no parameters, so --set a has nothing to set.",
            Assert.Throws<UsageException>(() => Overrides.Parse(["a=1"], "/").Apply(new NotebookText().Code("int a = 0;").Parse())).Message);

    [Fact]
    public void A_file_name_is_the_callers_even_when_the_file_is_missing()
    {
        scratch.Write("notes.txt", "");
        // The default of shots is a path, so whatever is given is one; target takes a path only where there is such a file.
        Assert.Equal($"shots = \"{scratch.Path("mine.csv")}\";", Injected("shots=mine.csv"));
        Assert.Equal($"target = \"{scratch.Path("notes.txt")}\";", Injected("target=notes.txt"));
        Assert.Equal("target = \"notebooks\";", Injected("target=notebooks"));
    }

    [Fact]
    public void The_values_stand_in_one_cell_right_after_the_declarations_and_replace_older_ones()
    {
        var notebook = new NotebookText().Text("# T").Code("int a = 1;", Cell.Parameters).Code("a = 5;", Cell.Injected).Code("a").Parse();
        Overrides.Parse(["a=2", "a=3"], scratch.Folder).Apply(notebook);
        Assert.Equal(["# T", "int a = 1;", "a = 3;", "a"], Ipynb.Parse("/n/x.ipynb", notebook.ToJson()).Cells.Select(c => c.Source));
        Assert.True(notebook.Cells[2].IsInjected);
    }

    string Injected(string given)
    {
        var notebook = new NotebookText().Code(Declarations, Cell.Parameters).Parse();
        Overrides.Parse([given], scratch.Folder).Apply(notebook);
        return notebook.Cells[1].Source;
    }
}
