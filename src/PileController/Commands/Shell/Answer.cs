using System.CommandLine;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace PileController.Commands.Shell;

/// <summary>Gives a command's answer to a person or to a machine.</summary>
internal static class Answer
{
    private static readonly JsonSerializerOptions Machine =
        new(JsonSerializerDefaults.Web) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>One line of JSON with camelCase keys.</summary>
    public static void WriteJson<T>(ParseResult parse, T answer) =>
        parse.InvocationConfiguration.Output.WriteLine(JsonSerializer.Serialize(answer, Machine));

    /// <summary>Names and values in two columns.</summary>
    public static void WriteRows(ParseResult parse, params IReadOnlyList<(string Name, string Value)> rows)
    {
        int width = rows.Max(r => r.Name.Length);
        foreach ((string name, string value) in rows)
        {
            parse.InvocationConfiguration.Output.WriteLine($"{name.PadRight(width)}  {value}");
        }
    }
}
