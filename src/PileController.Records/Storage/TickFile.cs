using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>What is asked of a file of ticks.</summary>
internal static class TickFile
{
    private const int Blocks = 0;
    private const int Lines = 1;

    /// <summary>Reads one block.</summary>
    /// <exception cref="InvalidDataException">It is gone or does not match its checksum or its id.</exception>
    public static PackedBatch Block(this RecordFile file, long firstSequence)
    {
        PackedBatch batch = PackedBatch.Parse(file.Part(Blocks, firstSequence)
            ?? throw new InvalidDataException($"The block of tick {firstSequence} is not in '{file.Name}'."));
        return batch.FirstSequence == firstSequence
            ? batch
            : throw new InvalidDataException($"The block filed under tick {firstSequence} is that of tick {batch.FirstSequence}.");
    }

    /// <summary>Reads the decision lines of one block, oldest first.</summary>
    /// <exception cref="InvalidDataException">They do not match their checksum.</exception>
    public static IReadOnlyList<DecisionLine> LinesOf(this RecordFile file, long firstSequence) =>
        file.Part(Lines, firstSequence) is { } bytes ? new PackedLines(bytes).All() : [];

    /// <summary>The ids under which decision lines are filed.</summary>
    public static IReadOnlyList<long> LineIds(this RecordFile file) => file.Ids(Lines);
}
