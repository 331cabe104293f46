namespace Ascham.Runner.Execution;

using Ascham.Runner.Documents;

/// <summary>A notebook that was run.</summary>
/// <param name="Notebook">With its new outputs.</param>
/// <param name="Answers">What it declared, in the order shown.</param>
/// <param name="Failure">Null when every cell ended well.</param>
sealed record NotebookResult(Ipynb Notebook, AnswerCollection Answers, Failure? Failure)
{
    public bool Passed => Failure is null;
}
