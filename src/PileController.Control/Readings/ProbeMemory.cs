using System.Runtime.InteropServices;

namespace PileController.Control.Readings;

/// <summary>What validation remembers of one probe.</summary>
/// <param name="LastQuanta">The last believed value, in quanta.</param>
/// <param name="LastAtMilliseconds">When it was believed, monotonic; -1 for never.</param>
/// <param name="RawQuanta">The value the port gave last.</param>
/// <param name="RawSinceMilliseconds">Since when the port gives exactly that value, monotonic.</param>
/// <param name="Agreeing">How many readings in a row have agreed with each other while differing from the believed value.</param>
/// <param name="Quality">The verdict of the tick before.</param>
[StructLayout(LayoutKind.Auto)] // Packed: one a channel is made every tick.
public readonly record struct ProbeMemory(
    int LastQuanta, long LastAtMilliseconds, int RawQuanta, long RawSinceMilliseconds, int Agreeing, ReadingQuality Quality)
{
    /// <summary>Nothing seen yet.</summary>
    public static ProbeMemory Fresh => new(0, -1, int.MinValue, 0, 0, ReadingQuality.NotFitted);
}
