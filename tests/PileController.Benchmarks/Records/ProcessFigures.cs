using System.Globalization;

namespace PileController.Benchmarks.Records;

/// <summary>What Linux says of this process.</summary>
internal static class ProcessFigures
{
    /// <summary>Bytes it has caused to be sent to the disk, in whole pages: <c>write_bytes</c> of <c>/proc/self/io</c> (proc(5)).</summary>
    public static long WrittenBytes() => Figure("/proc/self/io", "write_bytes:");

    /// <summary>Bytes of it that lie in memory after a full collection.</summary>
    public static long ResidentBytes()
    {
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        GC.WaitForPendingFinalizers();
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        return 1024 * Figure("/proc/self/status", "VmRSS:");
    }

    private static long Figure(string file, string name)
    {
        string line = File.ReadLines(file).First(line => line.StartsWith(name, StringComparison.Ordinal));
        return long.Parse(line[name.Length..].Replace("kB", "", StringComparison.Ordinal).Trim(), CultureInfo.InvariantCulture);
    }
}
