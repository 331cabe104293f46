namespace Ascham.Notebooks;

/// <summary>Who shows the cells: an interactive front end, or a program that runs a notebook from end to end.</summary>
/// <remarks>The settings are shared by the whole process; one notebook runs at a time.</remarks>
public static class NotebookHost
{
    /// <summary>
    /// Whether a program runs each cell once, in order, and lays out the page itself. Then figures never carry the plotting
    /// script (the page holds <see cref="FigureScript.Page"/> once), and declaring an answer twice is an error.
    /// In an interactive front end (<see langword="false"/>, the initial value) cells are run again at will.
    /// </summary>
    public static bool IsRunner { get; set; }

    /// <summary>Forgets what the previous notebook showed and answered; to be called before each notebook of a run.</summary>
    public static void StartNotebook()
    {
        Answers.Reset();
        FigureScript.Forget();
    }
}
