namespace Ascham.Runner.Execution;

using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

/// <summary>One declaration of a cell tagged <c>parameters</c>.</summary>
/// <param name="Name">The variable's name.</param>
/// <param name="Type">Its C# type; for <c>var</c> the type of the literal it starts with, or empty when that is no literal.</param>
/// <param name="Default">The text it starts with, without quotes for a string.</param>
sealed record Parameter(string Name, string Type, string Default)
{
    static readonly string[] Whole = ["int", "long", "short", "byte", "uint", "ulong", "ushort", "sbyte"];

    /// <summary>Reads the declarations of a parameter cell.</summary>
    public static IReadOnlyList<Parameter> Read(string source)
    {
        var root = CSharpSyntaxTree.ParseText(source, new CSharpParseOptions(kind: SourceCodeKind.Script)).GetCompilationUnitRoot();
        return [.. root.Members.OfType<FieldDeclarationSyntax>()
            .SelectMany(field => field.Declaration.Variables.Select(v => Of(field.Declaration.Type.ToString(), v)))];
    }

    /// <summary>The C# text that stands for a value given on the command line.</summary>
    /// <param name="value">The value as typed.</param>
    /// <param name="callerFolder">What a relative file name in <paramref name="value"/> is relative to.</param>
    /// <exception cref="UsageException">The value is not of the parameter's type.</exception>
    public string Literal(string value, string callerFolder)
    {
        var invariant = CultureInfo.InvariantCulture;
        string type = Type.TrimEnd('?');
        return type switch
        {
            "string" => SymbolDisplay.FormatLiteral(AsPath(value, callerFolder), quote: true),
            "bool" => bool.TryParse(value, out bool b) ? (b ? "true" : "false") : throw Wrong(value, "true or false"),
            "double" => double.TryParse(value, NumberStyles.Float, invariant, out double d) && double.IsFinite(d)
                ? d.ToString("R", invariant)
                : throw Wrong(value, "a number"),
            "float" => float.TryParse(value, NumberStyles.Float, invariant, out float f) && float.IsFinite(f)
                ? f.ToString("R", invariant) + "f"
                : throw Wrong(value, "a number"),
            "decimal" => decimal.TryParse(value, NumberStyles.Float, invariant, out decimal m)
                ? m.ToString(invariant) + "m"
                : throw Wrong(value, "a number"),
            _ when Whole.Contains(type) => long.TryParse(value, NumberStyles.AllowLeadingSign, invariant, out long n)
                ? n.ToString(invariant)
                : throw Wrong(value, "a whole number"),
            _ => Expression(value),
        };
    }

    static Parameter Of(string type, VariableDeclaratorSyntax variable)
    {
        var literal = Unsigned(variable.Initializer?.Value) as LiteralExpressionSyntax;
        string actual = type != "var" ? type : literal?.Token.Value switch
        {
            string => "string",
            bool => "bool",
            int => "int",
            long => "long",
            double => "double",
            float => "float",
            decimal => "decimal",
            _ => "",
        };
        return new(variable.Identifier.Text, actual, literal?.Token.ValueText ?? variable.Initializer?.Value.ToString() ?? "");
    }

    static ExpressionSyntax? Unsigned(ExpressionSyntax? value) => value is PrefixUnaryExpressionSyntax signed ? signed.Operand : value;

    // The notebook runs in its own folder, the user types in another one: a file name means the user's file.
    string AsPath(string value, string callerFolder)
    {
        if (value.Length == 0 || value.IndexOfAny(Path.GetInvalidPathChars()) >= 0)
        {
            return value;
        }

        string full = Path.GetFullPath(value, callerFolder);
        return LooksLikePath(Default) || (LooksLikePath(value) && Path.Exists(full)) ? full : value;
    }

    static bool LooksLikePath(string text) =>
        text.Contains('/') || text.Contains('\\') || (Path.GetExtension(text).Length > 1 && !text.Contains(' '));

    // Another type (a quantity, an array): the value is C#, such as 8.Inches.
    string Expression(string value)
    {
        var parsed = SyntaxFactory.ParseExpression(value, options: new CSharpParseOptions(kind: SourceCodeKind.Script));
        return parsed.ContainsDiagnostics || value.Contains('\n') ? throw Wrong(value, $"a C# expression such as {Default}") : value;
    }

    UsageException Wrong(string value, string wanted) => new($"--set {Name}={value}: {Name} takes {wanted}.");
}
