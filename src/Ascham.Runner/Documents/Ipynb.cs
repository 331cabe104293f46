namespace Ascham.Runner.Documents;

using System.Text.Json;
using System.Text.Json.Nodes;

/// <summary>A notebook file, edited on its own JSON: what is neither an output nor an execution count stays as it was.</summary>
sealed class Ipynb
{
    readonly JsonObject root;

    Ipynb(string path, JsonObject root, List<Cell> cells)
    {
        this.root = root;
        FullPath = path;
        Cells = cells;
    }

    public string FullPath { get; }

    /// <summary>The file's name without folder and extension.</summary>
    public string Name => Path.GetFileNameWithoutExtension(FullPath);

    public string Folder => Path.GetDirectoryName(FullPath)!;

    public List<Cell> Cells { get; }

    public IEnumerable<Cell> CodeCells => Cells.Where(c => c.IsCode);

    public Cell? ParameterCell => CodeCells.FirstOrDefault(c => c.HasTag(Cell.Parameters));

    /// <summary>Reads a notebook.</summary>
    /// <exception cref="UsageException">The file cannot be read, is not JSON, or is not a notebook of format 4.</exception>
    public static Ipynb Load(string path)
    {
        string full = Path.GetFullPath(path);
        return Parse(full, Read(full));
    }

    public static Ipynb Parse(string path, string json)
    {
        JsonNode? node;
        try
        {
            node = JsonNode.Parse(json, documentOptions: new JsonDocumentOptions { AllowDuplicateProperties = false });
        }
        catch (JsonException e)
        {
            throw new UsageException($"{path}: not a notebook, because line {e.LineNumber + 1} is not valid JSON.", e);
        }

        if (node is not JsonObject root || root["cells"] is not JsonArray cells || (int?)(root["nbformat"] as JsonValue) != 4)
        {
            throw new UsageException($"{path}: not a notebook of format 4 (an object with \"cells\" and \"nbformat\": 4 is expected).");
        }

        return new(path, root, [.. cells.OfType<JsonObject>().Select((cell, i) => new Cell(cell, i + 1))]);
    }

    /// <summary>Puts a code cell after another one, replacing what an earlier injection left in the file.</summary>
    public Cell Inject(Cell after, string source)
    {
        var array = (JsonArray)root["cells"]!;
        foreach (Cell old in Cells.Where(c => c.IsInjected).ToList())
        {
            array.Remove(old.Json);
            Cells.Remove(old);
        }

        var cell = new Cell(new JsonObject
        {
            ["cell_type"] = "code",
            ["execution_count"] = null,
            ["id"] = Cell.Injected,
            ["metadata"] = new JsonObject { ["tags"] = new JsonArray((JsonNode)Cell.Injected) },
            ["outputs"] = new JsonArray(),
            ["source"] = MultilineText.Lines(source),
        }, after.Number);
        array.Insert(array.IndexOf(after.Json) + 1, cell.Json);
        Cells.Insert(Cells.IndexOf(after) + 1, cell);
        return cell;
    }

    public string ToJson() => JupyterJson.Write(root);

    static string Read(string path)
    {
        try
        {
            return File.ReadAllText(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"{path}: cannot be read: {AtomicFile.Reason(e)}.", e);
        }
    }
}
