using PileController.Records.Packing;
using PileController.Records.Storage;
using PileController.Records.Summaries;

namespace PileController.Records.Keeping;

/// <summary>A day of ticks that has been summed up, opened when something is asked of it.</summary>
/// <param name="head">Which ticks.</param>
/// <param name="lasting">The file it lies in.</param>
/// <param name="minutes">The file its finest rows lie in, or null when they are no longer kept.</param>
internal sealed class StoredDay(BatchHead head, RecordFile lasting, RecordFile? minutes)
{
    /// <summary>Which ticks; its count spans numbers that are missing.</summary>
    public BatchHead Head { get; } = head;

    /// <summary>What its decision lines are marked with; needs no opening.</summary>
    public LineMarks Marks => lasting.MarksOf(Head.FirstSequence);

    /// <summary>Opens the rows of a tier; null when they are no longer kept.</summary>
    /// <exception cref="InvalidDataException">They are damaged.</exception>
    public PackedRows? Rows(Tier tier) => tier == Tier.Minute
        ? minutes?.Part(0, Head.FirstSequence) is { } bytes ? PackedRows.Parse(bytes) : null
        : PackedRows.Parse(Lasting(LastingPart.Of(tier)) ?? throw new InvalidDataException($"The rows of tier {tier} are gone."));

    /// <summary>Opens the lines of its decisions, oldest first.</summary>
    /// <exception cref="InvalidDataException">They do not match their checksum.</exception>
    public IReadOnlyList<DecisionLine> Lines() => PackedLines()?.All() ?? [];

    /// <summary>The lines of its decisions, still packed; null when it has none.</summary>
    public PackedLines? PackedLines() => Lasting(LastingPart.Decisions) is { } bytes ? new PackedLines(bytes) : null;

    /// <summary>Opens its text.</summary>
    /// <exception cref="InvalidDataException">It is gone or does not match its checksum.</exception>
    public DayText Text() => DayText.Parse(
        Lasting(LastingPart.Text) ?? throw new InvalidDataException("The text of a day is gone."));

    /// <summary>Says that it is damaged.</summary>
    public string Damage(Exception exception) =>
        $"The summary of tick {Head.FirstSequence} to {Head.LastSequence} in '{lasting.Name}': {exception.Message}";

    private byte[]? Lasting(int part) => lasting.Part(part, Head.FirstSequence);
}
