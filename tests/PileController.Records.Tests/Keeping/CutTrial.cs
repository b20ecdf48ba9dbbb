using PileController.Control.Decisions;
using PileController.Records.Keeping;
using PileController.Records.Tests.Storage;

namespace PileController.Records.Tests.Keeping;

/// <summary>A keeper at work on a simulated disk until its power is cut.</summary>
internal static class CutTrial
{
    /// <summary>Opens and works; what was acknowledged when the power went.</summary>
    public static (SimulatedDisk Disk, long Acknowledged) Run(
        SimulatedDisk disk, Func<SimulatedDisk, RecordKeeper> open, Action<RecordKeeper> work)
    {
        long acknowledged = 0;
        try
        {
            using RecordKeeper keeper = open(disk);
            try
            {
                work(keeper);
            }
            finally
            {
                acknowledged = keeper.SafeSequence;
            }
        }
        catch (IOException) when (disk.Steps >= disk.CutAt)
        {
            return (disk, acknowledged);
        }

        return (disk, acknowledged);
    }

    /// <summary>Writes what is not there yet.</summary>
    public static void Write(RecordKeeper keeper, IEnumerable<TickEntry> history)
    {
        foreach (TickEntry tick in history.Where(tick => tick.Decision.Sequence > keeper.LastSequence))
        {
            keeper.Keep(tick);
            keeper.SyncIfDue();
        }
    }

    /// <summary>Torn bytes at the tail's end are all a power cut may leave to tell of.</summary>
    public static string? SaidOfTorn(int bytes) => bytes == 0
        ? null
        : $"The tail ended in {bytes} bytes that make no whole frame: they were being written when the power went, or are damaged.";

    /// <summary>Whether a tick is worth a line.</summary>
    public static bool IsDecision(TickEntry tick) => tick.Decision.Kinds != DecisionKinds.Steady;
}
