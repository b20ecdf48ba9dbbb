using System.Text.Json;
using System.Text.Json.Serialization;
using PileController.Control.Readings;

namespace PileController.Records.Packing;

/// <summary>
/// Readings as one flat array: quanta, quality, age of each channel in turn, up to the last that says anything. A memory may
/// hold some.
/// </summary>
internal sealed class RigReadingsJson : JsonConverter<RigReadings>
{
    /// <inheritdoc/>
    public override RigReadings Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        int[] numbers = JsonSerializer.Deserialize<int[]>(ref reader, options) ?? [];
        if (numbers.Length % 3 != 0 || numbers.Length < 3 * ChannelTable.FirstCount || numbers.Length > 3 * ChannelTable.Count)
        {
            throw new JsonException(
                $"Stored readings have {numbers.Length} numbers; three a channel for {ChannelTable.FirstCount} to {ChannelTable.Count} channels are needed.");
        }

        Reading[] readings = new Reading[ChannelTable.Count];
        for (int i = 0; 3 * i < numbers.Length; i++)
        {
            readings[i] = new Reading(numbers[3 * i], (ReadingQuality)numbers[(3 * i) + 1], numbers[(3 * i) + 2]);
        }

        return new RigReadings(readings);
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, RigReadings value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        foreach (ref readonly Reading reading in value.Told())
        {
            writer.WriteNumberValue(reading.Quanta);
            writer.WriteNumberValue((byte)reading.Quality);
            writer.WriteNumberValue(reading.AgeMilliseconds);
        }

        writer.WriteEndArray();
    }
}
