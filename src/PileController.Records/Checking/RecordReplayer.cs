using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Storage;

namespace PileController.Records.Checking;

/// <summary>
/// Runs a record again: each batch from the memory stored at its head, every tick through the step, and compares
/// the digest of each decision and the memory each batch ends with. Batches do not need each other, so they are run on
/// all processors: a step has to be safe from any thread.
/// </summary>
public static class RecordReplayer
{
    // Read by one thread, as the store has it; then run by all. A day and a half of blocks takes little memory.
    private const int BatchesAtOnce = 32;

    /// <summary>Runs a record.</summary>
    /// <param name="dataDirectory">Its folder.</param>
    /// <param name="step">Control with its settings.</param>
    /// <param name="progress">Told the number of ticks done after each batch; may be null.</param>
    /// <exception cref="RecordInUseException">It is being changed without a pause.</exception>
    /// <exception cref="DirectoryNotFoundException">There is no such folder, or no record in it.</exception>
    public static ReplayReport Run(string dataDirectory, ReplayStep step, IProgress<long>? progress = null) =>
        Run(dataDirectory, _ => step, progress);

    /// <summary>Runs a record, each block with the settings it was made with.</summary>
    /// <param name="dataDirectory">Its folder.</param>
    /// <param name="steps">Finds control for a block's origin.</param>
    /// <param name="progress">Told the number of ticks done after each batch; may be null.</param>
    /// <exception cref="RecordInUseException">It is being changed without a pause.</exception>
    /// <exception cref="DirectoryNotFoundException">There is no such folder, or no record in it.</exception>
    public static ReplayReport Run(string dataDirectory, ReplaySteps steps, IProgress<long>? progress = null)
    {
        using RecordReader reader = RecordReader.Open(dataDirectory);
        return Run(reader.Batches, steps, progress);
    }

    internal static ReplayReport Run(IEnumerable<StoredBatch> batches, ReplaySteps steps, IProgress<long>? progress = null)
    {
        ReplayTally tally = new();
        KnownSteps known = new(steps);
        foreach (StoredBatch[] some in batches.Chunk(BatchesAtOnce))
        {
            (PackedBatch? Batch, string? Problem)[] opened = [.. some.Select(Open)];
            BatchReplay[] done = new BatchReplay[some.Length];
            Parallel.For(0, some.Length, at => done[at] = opened[at].Batch is { } batch
                ? BatchReplay.Of(some[at].Head, batch, known)
                : BatchReplay.Unreadable(opened[at].Problem!));
            foreach (BatchReplay replay in done)
            {
                replay.ThrowWhatTheStepThrew();
                tally.Add(replay);
                progress?.Report(tally.Ticks);
            }
        }

        return tally.Report();
    }

    private static (PackedBatch? Batch, string? Problem) Open(StoredBatch stored)
    {
        try
        {
            return (stored.Batch(), null);
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception))
        {
            return (null, BatchReplay.ProblemOf(stored.Head, exception.Message));
        }
    }
}
