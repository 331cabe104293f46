using System.Globalization;
using System.Runtime.InteropServices;
using Ascham.Runner;

CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.CurrentUICulture = CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;

using var stop = new CancellationTokenSource();
// The first signal lets the current file be finished or dropped; a second one ends the process as usual.
void Stop(PosixSignalContext signal)
{
    signal.Cancel = !stop.IsCancellationRequested;
    stop.Cancel();
}

using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);

// Not a return: a cell that did not end in time still has a thread.
Environment.Exit(await CommandLine.RunAsync(args, stop.Token));
