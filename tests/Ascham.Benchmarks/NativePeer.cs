namespace Ascham.Benchmarks;

using System.ComponentModel;
using System.Diagnostics;
using System.Runtime.InteropServices;

/// <summary>The same algorithm in C++ (batch.cpp), built on the spot where there is a compiler.</summary>
static class NativePeer
{
    /// <summary>Flies arrows; returns their mean height.</summary>
    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    public delegate double Batch(ulong seed, long arrows, int order);

    public static Batch? Load(out string? why)
    {
        string source = Path.Combine(AppContext.BaseDirectory, "batch.cpp"), library = Path.Combine(Path.GetTempPath(), $"ascham-batch-{Environment.ProcessId}.so");
        try
        {
            using Process compiler = Process.Start(new ProcessStartInfo("g++", ["-O3", "-march=native", "-shared", "-fPIC", "-o", library, source]) { RedirectStandardError = true })!;
            string errors = compiler.StandardError.ReadToEnd();
            compiler.WaitForExit();
            if (compiler.ExitCode != 0)
            {
                why = errors;
                return null;
            }

            nint handle = NativeLibrary.Load(library);
            File.Delete(library);
            why = null;
            return Marshal.GetDelegateForFunctionPointer<Batch>(NativeLibrary.GetExport(handle, "fly_batch"));
        }
        catch (Exception e) when (e is Win32Exception or DllNotFoundException)
        {
            why = $"no compiler g++ was found, or it builds no library this system loads ({e.Message})";
            return null;
        }
    }
}
