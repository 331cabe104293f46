namespace Ascham.Runner.Reports;

using Ascham.Runner.Documents;

/// <summary>A picture named by a text cell, as data inside the page.</summary>
static class InlineImage
{
    static readonly Dictionary<string, string> Types = new(StringComparer.OrdinalIgnoreCase)
    {
        [".png"] = "image/png",
        [".jpg"] = "image/jpeg",
        [".jpeg"] = "image/jpeg",
        [".gif"] = "image/gif",
        [".svg"] = "image/svg+xml",
    };

    /// <returns>A data URL; null when the picture is not an attachment of the cell, nor a file beside the notebook.</returns>
    public static string? Read(string url, string folder, Cell cell)
    {
        if (url.StartsWith("attachment:", StringComparison.Ordinal))
        {
            var (type, data) = (cell.Json["attachments"]?[Uri.UnescapeDataString(url["attachment:".Length..])]?.AsObject() ?? []).FirstOrDefault();
            return type is null ? null : $"data:{type};base64,{MultilineText.Read(data)}";
        }

        string file = Path.Combine(folder, Uri.UnescapeDataString(url));
        return Types.TryGetValue(Path.GetExtension(file), out string? image) && !url.Contains(':') && File.Exists(file)
            ? $"data:{image};base64,{Convert.ToBase64String(File.ReadAllBytes(file))}"
            : null;
    }
}
