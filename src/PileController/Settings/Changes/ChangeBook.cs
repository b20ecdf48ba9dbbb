using System.Text.Json;

namespace PileController.Settings.Changes;

/// <summary>One change made on the page.</summary>
/// <param name="UtcMs">When, milliseconds since 1970.</param>
/// <param name="Who">Who made it.</param>
/// <param name="From">From where: an address.</param>
/// <param name="Path">What was changed.</param>
/// <param name="Was">What it was, as JSON.</param>
/// <param name="Is">What it became, as JSON.</param>
internal sealed record ChangeEntry(long UtcMs, string Who, string From, string Path, string Was, string Is);

/// <summary>The values that lie over the settings file, and who put them there.</summary>
internal sealed record ChangeBook
{
    /// <summary>The only version there is.</summary>
    public const int Current = 1;

    /// <summary>How many changes are told; older ones stand in the kept settings of the record.</summary>
    public const int MostEntries = 500;

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Form of the file.</summary>
    public int Version { get; init; } = Current;

    /// <summary>Values as JSON, by path.</summary>
    public IReadOnlyDictionary<string, string> Values { get; init; } = new Dictionary<string, string>();

    /// <summary>What lay over the file before the newest change, as long as no service has run with that; else null.</summary>
    public IReadOnlyDictionary<string, string>? Before { get; init; }

    /// <summary>The changes, oldest first.</summary>
    public IReadOnlyList<ChangeEntry> Entries { get; init; } = [];

    /// <summary>As JSON.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Options) + "\n";

    /// <summary>Reads what <see cref="ToJson"/> wrote.</summary>
    /// <exception cref="JsonException">It is not such a text, or of a version this program does not know.</exception>
    public static ChangeBook FromJson(string text)
    {
        ChangeBook book = JsonSerializer.Deserialize<ChangeBook>(text, Options) ?? throw new JsonException("The file is empty.");
        return book.Version == Current && book.Values is not null && book.Entries is not null
            ? book
            : throw new JsonException($"Its version is {book.Version}; this program knows {Current}.");
    }

    /// <summary>The book without the change that no service has run with.</summary>
    public ChangeBook TakenBack() => Before is { } before ? this with { Values = before, Before = null } : this;

    /// <summary>The book after an edit.</summary>
    public ChangeBook After(EditOutcome outcome, long utcMs, string who, string from) => this with
    {
        Before = Values,
        Values = outcome.Values,
        Entries = [.. Entries
            .Concat(outcome.Differences.Select(one => new ChangeEntry(utcMs, who, from, one.Path, one.Was, one.Is)))
            .TakeLast(MostEntries)],
    };
}
