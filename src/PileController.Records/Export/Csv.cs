namespace PileController.Records.Export;

/// <summary>Fields and lines as RFC 4180 has them: CRLF, quotes round what needs them, quotes doubled.</summary>
internal static class Csv
{
    private static readonly System.Buffers.SearchValues<char> Quoted = System.Buffers.SearchValues.Create(",\"\r\n");

    /// <summary>Writes one line.</summary>
    public static void Line(TextWriter to, params ReadOnlySpan<string> fields)
    {
        for (int i = 0; i < fields.Length; i++)
        {
            if (i > 0)
            {
                to.Write(',');
            }

            to.Write(Field(fields[i]));
        }

        to.Write("\r\n");
    }

    /// <summary>A number to the last bit, or an empty field for none.</summary>
    public static string Number(double? value) => value is { } some ? some.ToString("R") : "";

    /// <summary>
    /// A text that people had a part in. A table program would take one that begins so for a formula, and reckon what it asks
    /// for; an apostrophe in front makes it text again (OWASP, CSV Injection, from memory).
    /// </summary>
    public static string Typed(string text) => text is ['=' or '+' or '-' or '@' or '\t' or '\r', ..] ? "'" + text : text;

    /// <summary>A moment as ISO 8601 in UTC, to the millisecond.</summary>
    public static string Moment(long utcMilliseconds) =>
        DateTimeOffset.FromUnixTimeMilliseconds(utcMilliseconds).ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'");

    private static string Field(string text) =>
        text.AsSpan().ContainsAny(Quoted) ? '"' + text.Replace("\"", "\"\"", StringComparison.Ordinal) + '"' : text;
}
