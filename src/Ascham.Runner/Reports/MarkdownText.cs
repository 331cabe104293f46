namespace Ascham.Runner.Reports;

using System.Text.RegularExpressions;
using Markdig;
using Markdig.Renderers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

/// <summary>A notebook's text cells as HTML that loads nothing and runs nothing.</summary>
static partial class MarkdownText
{
    static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().UseAdvancedExtensions().Build();

    /// <summary>The text of the first heading; null when there is none.</summary>
    public static string? Title(string markdown)
    {
        var heading = Markdown.Parse(markdown, Pipeline).OfType<HeadingBlock>().FirstOrDefault();
        return heading?.Inline is null ? null : PlainText(heading.Inline).Trim();
    }

    /// <param name="markdown">The cell's text.</param>
    /// <param name="withoutTitle">Leaves out the first heading, which the page shows already.</param>
    /// <param name="image">Gives the data of a picture named by the text; null shows its description instead.</param>
    public static string ToHtml(string markdown, bool withoutTitle = false, Func<string, string?>? image = null)
    {
        var document = Markdown.Parse(markdown, Pipeline);
        if (withoutTitle && document.OfType<HeadingBlock>().FirstOrDefault() is { } title)
        {
            document.Remove(title);
        }

        Tame(document, image ?? (_ => null));
        using var writer = new StringWriter();
        var renderer = new HtmlRenderer(writer);
        Pipeline.Setup(renderer);
        renderer.Render(document);
        // Formulas stay as they were written, without the marks that a typesetting script would look for.
        return Formula().Replace(writer.ToString(), "$1$2$3");
    }

    static void Tame(MarkdownDocument document, Func<string, string?> image)
    {
        foreach (var block in document.Descendants<HtmlBlock>().ToList())
        {
            string text = block.Lines.ToString();
            if (!IsHarmless(text) && block.Parent is { } parent)
            {
                var literal = new ParagraphBlock { Inline = new ContainerInline() };
                literal.Inline.AppendChild(new LiteralInline(text));
                parent[parent.IndexOf(block)] = literal;
            }
        }

        foreach (var inline in document.Descendants<HtmlInline>().Where(i => !IsHarmless(i.Tag)).ToList())
        {
            inline.ReplaceBy(new LiteralInline(inline.Tag));
        }

        foreach (var link in document.Descendants<LinkInline>().ToList())
        {
            TameLink(link, image);
        }
    }

    static void TameLink(LinkInline link, Func<string, string?> image)
    {
        string url = link.Url ?? "";
        if (link.IsImage)
        {
            if (image(url) is { } data)
            {
                link.Url = data;
            }
            else
            {
                link.ReplaceBy(new LiteralInline($"[{PlainText(link)}]"), copyChildren: false);
            }
        }
        else if (Scheme().Match(url) is { Success: true } scheme && scheme.Value is not ("http:" or "https:" or "mailto:"))
        {
            link.Url = "";
        }
        else if (!Scheme().IsMatch(url) && url.EndsWith(".ipynb", StringComparison.Ordinal))
        {
            // Another notebook: in the reports' folder its page stands beside this one.
            link.Url = Path.GetFileNameWithoutExtension(url) + ".html";
        }
    }

    static bool IsHarmless(string html) => HarmlessTag().Replace(html, "").IndexOfAny(['<', '>']) < 0;

    static string PlainText(ContainerInline inline) => string.Concat(inline.Descendants().Select(d => d switch
    {
        LiteralInline literal => literal.Content.ToString(),
        CodeInline code => code.Content,
        HtmlInline tag => tag.Tag,
        HtmlEntityInline entity => entity.Transcoded.ToString(),
        _ => "",
    }));

    // Layout that Markdown has no sign for; without attributes none of these can load or run anything.
    [GeneratedRegex(@"</?(?:details|summary|sub|sup|br|kbd|b|i|em|strong|p|small)\s*/?>", RegexOptions.IgnoreCase)]
    private static partial Regex HarmlessTag();

    [GeneratedRegex(@"(<(?:span|div) class=""math"">)\s*\\[(\[](.*?)\\[)\]]\s*(</)", RegexOptions.Singleline)]
    private static partial Regex Formula();

    [GeneratedRegex("^[a-zA-Z][a-zA-Z0-9+.-]*:")]
    private static partial Regex Scheme();
}
