namespace Ascham.Runner.Execution;

using System.Globalization;
using System.Text;
using Ascham.Runner.Documents;
using Microsoft.DotNet.Interactive.Formatting;

/// <summary>How values without a display of their own are shown: plain text for simple ones, short forms for third-party types whose default is a tree of kilobytes.</summary>
static class Displays
{
    static readonly Type[] Simple =
        [typeof(string), typeof(int), typeof(long), typeof(double), typeof(float), typeof(decimal), typeof(bool), typeof(DateTime), typeof(DateOnly), typeof(TimeSpan)];

    /// <summary>Resets the process-wide registry, so that a notebook sees nothing of the one before it.</summary>
    public static void Reset()
    {
        Formatter.ResetToDefault();
        Formatter.DefaultMimeType = "text/html";
        foreach (Type type in Simple)
        {
            Formatter.SetPreferredMimeTypesFor(type, "text/plain");
        }

        Formatter.SetPreferredMimeTypesFor(typeof(UnitsNet.IQuantity), "text/plain");
        Formatter.Register<UnitsNet.IQuantity>(q => q.ToString("G6", CultureInfo.InvariantCulture), "text/plain");

        Formatter.SetPreferredMimeTypesFor(typeof(Plotly.NET.GenericChart), MimeTypes.Plotly, "text/plain");
        Formatter.Register<Plotly.NET.GenericChart>(Plotly.NET.GenericChart.toFigureJson, MimeTypes.Plotly);
        Formatter.Register<Plotly.NET.GenericChart>(_ => "chart", "text/plain");

        Formatter.SetPreferredMimeTypesFor(typeof(Deedle.Internal.IFrameFormattable), "text/html", "text/plain");
        Formatter.Register<Deedle.Internal.IFrameFormattable>(FrameHtml, "text/html");
        Formatter.Register<Deedle.Internal.IFrameFormattable>(f => f.ToString() ?? "", "text/plain");
    }

    // At most this many rows and columns of a frame are shown; Deedle marks what it leaves out.
    const int Rows = 30;
    const int Columns = 40;

    static string FrameHtml(Deedle.Internal.IFrameFormattable frame)
    {
        string[][] cells = frame.InteractiveFormat(Rows, Columns, false);
        var html = new StringBuilder("<table>");
        for (int row = 0; row < cells.Length; row++)
        {
            string tag = row == 0 ? "th" : "td";
            html.Append("<tr>").AppendJoin("", cells[row].Where(c => c != "->").Select(c => $"<{tag}>{Documents.Html.Escape(c)}</{tag}>")).Append("</tr>");
        }

        return html.Append("</table>").ToString();
    }
}
