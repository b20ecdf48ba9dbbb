using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using PileController.Control;

namespace PileController.Records.Packing;

/// <summary>The one way in which the record writes JSON: doubles come back to the bit, infinities and NaN included.</summary>
internal static class RecordJson
{
    public static JsonSerializerOptions Options { get; } = new(JsonSerializerDefaults.Web)
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        Converters = { new RigReadingsJson() },
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>A memory as a JSON value.</summary>
    public static JsonElement Of(Memory memory) => JsonSerializer.SerializeToElement(memory, Options);

    /// <summary>The memory a JSON value stands for.</summary>
    /// <exception cref="JsonException">It was written by a build whose memory looked otherwise.</exception>
    public static Memory ToMemory(JsonElement memory) =>
        memory.Deserialize<Memory>(Options) ?? throw new JsonException("The stored memory is null.");
}
