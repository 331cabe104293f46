namespace Ascham.Notebooks;

using System.Globalization;
using System.Reflection;
using Ascham.Quantities;
using Deedle;
using Plotly.NET;
using UnitsNet;

/// <summary>Short displays of types that know nothing of notebooks; pure functions for a host to register as formatters.</summary>
/// <remarks>The usual displays of these types are far too long: a tree for a quantity, megabytes for a frame.</remarks>
public static class NotebookDisplay
{
    /// <summary>Writes a quantity with its unit, four significant digits: <c>1.524 mm</c>.</summary>
    /// <param name="quantity">Any UnitsNet quantity.</param>
    /// <returns>Text in the invariant culture.</returns>
    public static string Text(IQuantity quantity)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        return NumberText.With(NumberText.Plain(quantity.As(quantity.Unit)), NumberText.Unit(quantity.Unit));
    }

    /// <summary>Writes an estimate with its interval and the digits that are known, in the unit that its value carries.</summary>
    /// <typeparam name="T">A UnitsNet quantity.</typeparam>
    /// <param name="estimate">The estimate.</param>
    /// <returns>Text such as <c>1.52 mm (90 %: 1.10 to 1.94 mm)</c>.</returns>
    public static string Text<T>(Estimate<T> estimate)
        where T : IQuantity
    {
        ArgumentNullException.ThrowIfNull(estimate);
        return NumberText.Of(NumberText.In(estimate, estimate.Value.Unit), NumberText.Unit(estimate.Value.Unit));
    }

    /// <summary>Writes an estimate of a plain number with its interval and the digits that are known.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <returns>Text such as <c>1.52 (90 %: 1.10 to 1.94)</c>.</returns>
    public static string Text(Estimate<double> estimate)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        return NumberText.Of(estimate, "");
    }

    /// <summary>Writes a value whose type is known only when it is shown: a quantity or an estimate as above, anything else as it writes itself.</summary>
    /// <param name="value">The value.</param>
    /// <returns>Text in the invariant culture.</returns>
    public static string TextOf(object value)
    {
        ArgumentNullException.ThrowIfNull(value);
        Type type = value.GetType();
        return value switch
        {
            IQuantity quantity => Text(quantity),
            Estimate<double> estimate => Text(estimate),
            _ when type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Estimate<>) && typeof(IQuantity).IsAssignableFrom(type.GenericTypeArguments[0]) =>
                (string)OfAnyQuantity.MakeGenericMethod(type.GenericTypeArguments).Invoke(null, [value])!,
            IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
            _ => value.ToString() ?? "",
        };
    }

    static readonly MethodInfo OfAnyQuantity = typeof(NotebookDisplay).GetMethods().Single(m => m.Name == nameof(Text) && m.IsGenericMethodDefinition);

    /// <summary>Writes the first rows of a Deedle frame of any key types as a table.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="rows">Most rows to show; positive.</param>
    /// <returns>The table; take its HTML or its text.</returns>
    public static Table Show(IFrame frame, int rows = 20)
    {
        ArgumentNullException.ThrowIfNull(frame);
        return frame.Apply(new FirstRows(rows));
    }

    /// <summary>Writes a bare Plotly.NET chart, which has neither title, words nor table, for <see cref="FigureScript"/> to draw.</summary>
    /// <param name="chart">The chart.</param>
    /// <returns>An HTML fragment without the drawing script.</returns>
    public static string Html(GenericChart chart) =>
        chart.ToFigure("Chart", "A chart without description", Table.From(["not listed"], Array.Empty<object[]>())).ToHtml();

    sealed class FirstRows(int rows) : IFrameOperation<Table>
    {
        public Table Invoke<TRow, TColumn>(Frame<TRow, TColumn> frame) => Table.From(frame, rows);
    }
}
