using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace PileController.Settings.Fields;

/// <summary>JSON in one line that a person can read: "°C" stays "°C".</summary>
internal static class JsonText
{
    private static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>What <paramref name="write"/> writes.</summary>
    public static string Of(Action<Utf8JsonWriter> write)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter writer = new(stream, Options))
        {
            write(writer);
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
