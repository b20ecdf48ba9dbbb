using System.Text.Json;
using PileController.Settings.Changes;
using PileController.Settings.Fields;
using PileController.Settings.Tables;

namespace PileController.Panel.Editing;

/// <summary>One setting as the page shows it.</summary>
/// <param name="Path">Where it stands in the file.</param>
/// <param name="Value">What is in force.</param>
/// <param name="File">What the file says, or would say where it leaves it out.</param>
/// <param name="Changed">Whether a change made on the page lies over the file.</param>
/// <param name="Doc">What it means.</param>
/// <param name="Allowed">What is allowed.</param>
/// <param name="InTheFile">Why it can be changed in the file only; null where the page may.</param>
/// <param name="MayGo">"higher" or "lower" where an interlock's limit can be tightened only.</param>
internal sealed record SettingBody(
    string Path, JsonElement Value, JsonElement File, bool Changed, string Doc, string Allowed, string? InTheFile, string? MayGo);

/// <summary>The answer to <c>GET /api/settings</c>.</summary>
internal sealed record SettingsBody(
    string Fingerprint, bool Waiting, string? Trouble, IReadOnlyList<SettingBody> Settings, IReadOnlyList<ChangeBody> Changes)
{
    private const int TellChanges = 50;

    /// <summary>All settings of a desk.</summary>
    public static SettingsBody Of(SettingsDesk desk, Func<long, int> offsetMinutesAt)
    {
        ChangeBook book = desk.Book;
        Dictionary<string, FieldRow> rows = PileFields.Table.Rows("").DistinctBy(row => row.Path).ToDictionary(row => row.Path);
        IEnumerable<SettingBody> settings = SettingsLeaf.Of(desk.Effective).Zip(SettingsLeaf.Of(desk.File))
            .Select(pair => Of(pair.First, pair.Second, rows.GetValueOrDefault(pair.First.Path)));
        return new SettingsBody(
            desk.Effective.Fingerprint(), desk.Asked, desk.Trouble, [.. settings],
            [.. book.Entries.Reverse().Take(TellChanges).Select(entry => ChangeBody.Of(entry, offsetMinutesAt(entry.UtcMs)))]);
    }

    private static SettingBody Of(SettingsLeaf now, SettingsLeaf file, FieldRow? row) => new(
        now.Path, Shown(now), Shown(file), now.Json != file.Json, row?.Doc ?? "A list.", row?.Allowed ?? "what the file explains",
        EditRules.WhyInTheFile(now.Path), EditRules.MayGo(now.Path));

    private static JsonElement Shown(SettingsLeaf leaf) =>
        EditRules.IsSecret(leaf.Path) && leaf.Json != "\"\"" ? Json("\"set, not shown\"") : Json(leaf.Json);

    private static JsonElement Json(string text) => JsonSerializer.Deserialize<JsonElement>(text);
}

/// <summary>One change that was made.</summary>
internal sealed record ChangeBody(long UtcMs, string LocalTime, string Who, string From, string Path, JsonElement Was, JsonElement Is)
{
    /// <summary>As told.</summary>
    public static ChangeBody Of(ChangeEntry entry, int offsetMinutes) => new(
        entry.UtcMs, LocalTimes.Text(entry.UtcMs, offsetMinutes), entry.Who, entry.From, entry.Path,
        JsonSerializer.Deserialize<JsonElement>(entry.Was), JsonSerializer.Deserialize<JsonElement>(entry.Is));
}
