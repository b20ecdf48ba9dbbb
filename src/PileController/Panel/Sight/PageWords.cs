using System.Text.RegularExpressions;

namespace PileController.Panel.Sight;

/// <summary>
/// Reads texts out of the page's own word files, so that they stand in one place although both the scripts and
/// <see cref="SightText"/> say them. Knows the forms in which they are written there: a text, a text with figures, a
/// table or list of texts.
/// </summary>
/// <param name="textOf">The text behind a path.</param>
internal sealed partial class PageWords(Func<string, string> textOf)
{
    private const string Folder = "/js/words/";

    private readonly Dictionary<string, IReadOnlyDictionary<string, Wording>> _files = new(StringComparer.Ordinal);
    private readonly Lock _lock = new();

    /// <summary>A text.</summary>
    /// <param name="file">Name of its file, without the ending.</param>
    /// <param name="name">Its name; of a table's row "TABLE.row", of a list's "LIST.0".</param>
    /// <param name="figures">What is put into it, in the order in which it asks for it.</param>
    /// <exception cref="InvalidOperationException">There is no such text, or it asks for other figures.</exception>
    public string Say(string file, string name, params ReadOnlySpan<string> figures)
    {
        if (!FileOf(file).TryGetValue(name, out Wording? wording) || wording.Asks.Length != figures.Length)
        {
            throw new InvalidOperationException($"{Folder}{file}.js: no text '{name}' with {figures.Length} figures.");
        }

        string text = wording.Text;
        for (int at = 0; at < figures.Length; at++)
        {
            text = text.Replace("${" + wording.Asks[at] + "}", figures[at], StringComparison.Ordinal);
        }

        return text;
    }

    private IReadOnlyDictionary<string, Wording> FileOf(string file)
    {
        lock (_lock)
        {
            if (!_files.TryGetValue(file, out IReadOnlyDictionary<string, Wording>? found))
            {
                _files[file] = found = Read(textOf($"{Folder}{file}.js"));
            }

            return found;
        }
    }

    private static Dictionary<string, Wording> Read(string script)
    {
        Dictionary<string, Wording> found = new(StringComparer.Ordinal);
        foreach (Match one in Plain().Matches(script))
        {
            found[one.Groups["name"].Value] = new Wording(Unescape(one.Groups["text"].Value), []);
        }

        foreach (Match one in WithFigures().Matches(script))
        {
            found[one.Groups["name"].Value] = new Wording(Unescape(one.Groups["text"].Value), [.. Name().Matches(one.Groups["asks"].Value).Select(ask => ask.Value)]);
        }

        foreach (Match table in Table().Matches(script))
        {
            int number = 0;
            foreach (Match row in Row().Matches(table.Groups["rows"].Value))
            {
                string key = row.Groups["key"].Success ? row.Groups["key"].Value : $"{number}";
                found[$"{table.Groups["name"].Value}.{key}"] = new Wording(Unescape(row.Groups["text"].Value), []);
                number++;
            }
        }

        return found;
    }

    private static string Unescape(string text) => Escape().Replace(text, one => one.Groups["code"].Success
        ? ((char)Convert.ToInt32(one.Groups["code"].Value, 16)).ToString()
        : one.Groups["sign"].Value);

    [GeneratedRegex("""^export const (?<name>\w+) = "(?<text>(?:[^"\\]|\\.)*)";""", RegexOptions.Multiline)]
    private static partial Regex Plain();

    [GeneratedRegex("""^export const (?<name>\w+) = \((?<asks>[^)]*)\) =>\s+`(?<text>(?:[^`\\]|\\.)*)`;""", RegexOptions.Multiline)]
    private static partial Regex WithFigures();

    [GeneratedRegex("""^export const (?<name>\w+) = [{[](?<rows>[^{}\]]*)[}\]];""", RegexOptions.Multiline)]
    private static partial Regex Table();

    [GeneratedRegex("""(?:(?<key>\w+): )?"(?<text>(?:[^"\\]|\\.)*)"(?:,|\s|$)""")]
    private static partial Regex Row();

    [GeneratedRegex(@"\w+")]
    private static partial Regex Name();

    [GeneratedRegex(@"\\(?:u(?<code>[0-9a-fA-F]{4})|(?<sign>.))")]
    private static partial Regex Escape();

    private sealed record Wording(string Text, string[] Asks);
}
