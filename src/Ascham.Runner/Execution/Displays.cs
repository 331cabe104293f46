namespace Ascham.Runner.Execution;

using Ascham.Notebooks;
using Ascham.Quantities;
using Ascham.Runner.Documents;
using Microsoft.DotNet.Interactive.Formatting;

/// <summary>How values are shown that do not say it themselves: plain text for simple ones, short forms for types whose usual display is a tree of kilobytes.</summary>
static class Displays
{
    static readonly Type[] Simple =
        [typeof(string), typeof(int), typeof(long), typeof(double), typeof(float), typeof(decimal), typeof(bool), typeof(DateTime), typeof(DateOnly), typeof(TimeSpan)];

    /// <summary>Resets the process-wide registry, so that a notebook sees nothing of the one before it.</summary>
    public static void Reset()
    {
        Formatter.ResetToDefault();
        Formatter.DefaultMimeType = MimeTypes.Html;
        foreach (Type type in Simple)
        {
            Formatter.SetPreferredMimeTypesFor(type, MimeTypes.Plain);
        }

        Formatter.SetPreferredMimeTypesFor(typeof(UnitsNet.IQuantity), MimeTypes.Plain);
        Formatter.Register<UnitsNet.IQuantity>(NotebookDisplay.Text, MimeTypes.Plain);
        Formatter.SetPreferredMimeTypesFor(typeof(Estimate<>), MimeTypes.Plain);
        // The quantity is known only as the cell runs.
        Formatter.Register(typeof(Estimate<>), (estimate, writer) => writer.Write((string)NotebookDisplay.Text((dynamic)estimate)), MimeTypes.Plain);
        Formatter.SetPreferredMimeTypesFor(typeof(Deedle.IFrame), MimeTypes.Html, MimeTypes.Plain);
        Formatter.Register<Deedle.IFrame>(frame => NotebookDisplay.Show(frame).ToHtml(), MimeTypes.Html);
        Formatter.Register<Deedle.IFrame>(frame => NotebookDisplay.Show(frame).ToString(), MimeTypes.Plain);
        Formatter.SetPreferredMimeTypesFor(typeof(Plotly.NET.GenericChart), MimeTypes.Html, MimeTypes.Plain);
        Formatter.Register<Plotly.NET.GenericChart>(NotebookDisplay.Html, MimeTypes.Html);
        Formatter.Register<Plotly.NET.GenericChart>(_ => "Chart", MimeTypes.Plain);

        // A figure shows itself; here it also gives the form that still pictures are drawn from. Asking first makes the
        // registry read the figure's own wishes now: it would put them above these if it met the type later.
        Formatter.GetPreferredMimeTypesFor(typeof(Figure));
        Formatter.SetPreferredMimeTypesFor(typeof(Figure), MimeTypes.Html, MimeTypes.Picture, MimeTypes.Plain);
        Formatter.Register<Figure>(figure => figure.ToHtml(), MimeTypes.Html);
        Formatter.Register<Figure>(figure => figure.ToPictureJson(), MimeTypes.Picture);
        Formatter.Register<Figure>(figure => figure.ToString(), MimeTypes.Plain);
    }
}
