using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Records.Packing;

namespace PileController.Records.Summaries;

/// <summary>What of a day of ticks is kept for ever and is neither a number nor a decision's line.</summary>
/// <param name="Origin">Who made its last block.</param>
/// <param name="Memory">What the last block that ends in it handed on, to resume from; null when none ends in it.</param>
/// <param name="Commands">Its commands.</param>
internal sealed record DayText(RecordOrigin? Origin, JsonElement? Memory, IReadOnlyList<CommandOfTick> Commands)
{
    /// <summary>Packs it: JSON, compressed, sealed.</summary>
    public byte[] Pack()
    {
        ByteSink sink = new();
        Section.Write(sink, JsonSerializer.SerializeToUtf8Bytes(this, RecordJson.Options));
        return sink.Seal();
    }

    /// <summary>Undoes <see cref="Pack"/>.</summary>
    /// <exception cref="InvalidDataException">It does not match its checksum.</exception>
    public static DayText Parse(byte[] bytes) =>
        JsonSerializer.Deserialize<DayText>(Section.Read(ByteSink.Unseal(bytes, "The text of a day")), RecordJson.Options)
        ?? throw new InvalidDataException("The text of a day is null.");
}

/// <summary>A command and the number of the tick at which it took effect.</summary>
internal sealed record CommandOfTick(long Sequence, Command Command);
