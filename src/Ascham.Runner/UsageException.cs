namespace Ascham.Runner;

/// <summary>What was asked cannot be done as asked: a wrong name, a wrong value, a folder that cannot be written. One sentence, exit code 2.</summary>
sealed class UsageException : Exception
{
    public UsageException(string message) : base(message) { }
    public UsageException(string message, Exception inner) : base(message, inner) { }
}
