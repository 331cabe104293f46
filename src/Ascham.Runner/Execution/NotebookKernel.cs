namespace Ascham.Runner.Execution;

using System.Reflection;
using System.Text;
using Ascham.Notebooks;
using Ascham.Runner.Documents;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;

/// <summary>A fresh C# kernel. Its displays, console capture and current directory belong to the whole process: one at a time.</summary>
/// <remarks>The only file, with <see cref="Displays"/>, <see cref="OutputRecorder"/> and <see cref="FailureReader"/>, that knows the kernel package.</remarks>
sealed class NotebookKernel : IDisposable
{
    // The package offers no way to name a submission's file, which line numbers need. It is frozen, so its private
    // field will not move; if it did, only the line numbers would be lost.
    static readonly FieldInfo? ScriptOptionsField =
        typeof(CSharpKernel).GetField("_scriptOptions", BindingFlags.Instance | BindingFlags.NonPublic);

    readonly CSharpKernel csharp;
    readonly CompositeKernel kernel;

    public NotebookKernel()
    {
        Displays.Reset();
        NotebookHost.IsRunner = true;
        NotebookHost.StartNotebook();
        csharp = new CSharpKernel().UseKernelHelpers();
        kernel = new CompositeKernel { csharp };
        kernel.DefaultKernelName = csharp.Name;
        Configure(o => o.WithEmitDebugInformation(true).WithFileEncoding(Encoding.UTF8));
    }

    public void AddReferences(IEnumerable<string> assemblies) => csharp.AddAssemblyReferences(assemblies);

    /// <summary>Runs a cell.</summary>
    /// <returns>The events in order, complete; null when the cell did not end in time. Its thread then still runs: a thread cannot be stopped.</returns>
    public async Task<IReadOnlyList<KernelEvent>?> RunAsync(string code, Cell cell, TimeSpan limit, CancellationToken cancellation)
    {
        Configure(o => o.WithFilePath(FailureReader.FileNameOf(cell)));
        // On another thread, because a submission that never awaits would hold this one.
        var run = Task.Run(() => kernel.SendAsync(new SubmitCode(code), CancellationToken.None), cancellation);
        try
        {
            return (await run.WaitAsync(limit, cancellation)).Events;
        }
        catch (TimeoutException) when (!run.IsCompleted)
        {
            return null;
        }
    }

    public void Dispose() => kernel.Dispose();

    void Configure(Func<ScriptOptions, ScriptOptions> change)
    {
        if (ScriptOptionsField?.GetValue(csharp) is ScriptOptions options)
        {
            ScriptOptionsField.SetValue(csharp, change(options));
        }
    }
}
