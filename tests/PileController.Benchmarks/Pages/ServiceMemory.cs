using System.Diagnostics.Tracing;
using System.Globalization;
using Microsoft.Diagnostics.NETCore.Client;
using Microsoft.Diagnostics.Tracing;
using Microsoft.Diagnostics.Tracing.Parsers;

namespace PileController.Benchmarks.Pages;

/// <summary>What a process takes: what it holds as it runs, and what of it is left once everything unused is collected.</summary>
/// <param name="PrivateMegabytes">Memory of its own in the machine's before the collection (<c>RssAnon</c> of <c>/proc/PID/status</c>, proc(5)).</param>
/// <param name="HeapMegabytes">Objects that are still in use, after a full collection.</param>
/// <param name="CollectedPrivateMegabytes">Memory of its own after the collection.</param>
internal sealed record ServiceMemory(double PrivateMegabytes, double HeapMegabytes, double CollectedPrivateMegabytes)
{
    private const string Runtime = "Microsoft-Windows-DotNETRuntime";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    /// <summary>Looks at a process of .NET, and has it collect.</summary>
    /// <exception cref="IOException">It did not collect in time.</exception>
    public static async Task<ServiceMemory> TakeAsync(int process)
    {
        double before = PrivateOf(process);
        long heap = await CollectAsync(process);
        return new ServiceMemory(before, Megabytes(heap), PrivateOf(process));
    }

    // A session that asks for this keyword makes the runtime collect everything once.
    private static async Task<long> CollectAsync(int process)
    {
        ClrTraceEventParser.Keywords asked = ClrTraceEventParser.Keywords.GC | ClrTraceEventParser.Keywords.GCHeapCollect;
        EventPipeProvider provider = new(Runtime, EventLevel.Informational, (long)asked);
        using EventPipeSession session = await new DiagnosticsClient(process).StartEventPipeSessionAsync(
            [provider], requestRundown: false, circularBufferMB: 1, CancellationToken.None);
        using EventPipeEventSource source = new(session.EventStream);
        TaskCompletionSource<long> collected = new(TaskCreationOptions.RunContinuationsAsynchronously);
        source.Clr.GCHeapStats += stats => collected.TrySetResult(stats.TotalHeapSize);
        Task reading = Task.Run(source.Process);
        if (await Task.WhenAny(collected.Task, Task.Delay(Patience)) != collected.Task)
        {
            throw new IOException("The service did not collect its memory when asked to.");
        }

        await session.StopAsync(CancellationToken.None);
        await reading;
        return await collected.Task;
    }

    /// <summary>Memory of a process's own, in megabytes, without collecting.</summary>
    public static double PrivateOf(int process)
    {
        const string Name = "RssAnon:";
        string line = File.ReadLines($"/proc/{process}/status").First(line => line.StartsWith(Name, StringComparison.Ordinal));
        return Megabytes(1024 * long.Parse(line[Name.Length..].Replace("kB", "", StringComparison.Ordinal).Trim(), CultureInfo.InvariantCulture));
    }

    private static double Megabytes(long bytes) => Math.Round(bytes / 1e6, 1);
}
