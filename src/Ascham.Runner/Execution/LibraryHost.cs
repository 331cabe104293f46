namespace Ascham.Runner.Execution;

/// <summary>Tells Ascham.Notebooks that a program runs the cells, and when a notebook begins.</summary>
static class LibraryHost
{
    public static void StartNotebook()
    {
        var host = Type.GetType("Ascham.Notebooks.NotebookHost, Ascham.Notebooks");
        host?.GetProperty("IsRunner")?.SetValue(null, true);
        host?.GetMethod("StartNotebook")?.Invoke(null, null);
    }
}
