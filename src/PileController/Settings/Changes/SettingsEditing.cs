using System.Text.Json;
using PileController.Settings.Json;
using PileController.Units;

namespace PileController.Settings.Changes;

/// <summary>Tries an edit of the settings. Pure: nothing is written and nothing takes effect.</summary>
internal static class SettingsEditing
{
    /// <summary>What an edit would come to.</summary>
    /// <param name="fileText">The settings file, without faults.</param>
    /// <param name="values">The values that lie over it now, by path.</param>
    /// <param name="edit">What is wanted.</param>
    public static EditOutcome Try(string fileText, IReadOnlyDictionary<string, string> values, SettingsEdit edit)
    {
        PileSettings file = SettingsFile.Parse(fileText).Settings;
        PileSettings now = SettingsFile.Parse(SettingsMerge.Text(fileText, values)).Settings;
        Dictionary<string, string> own = SettingsLeaf.Of(file).ToDictionary(leaf => leaf.Path, leaf => leaf.Json);
        List<SettingsFault> faults = [.. edit.Set.Keys.Concat(edit.Reset).Select(path => Refusal(path, own, edit)).OfType<SettingsFault>()];

        SortedDictionary<string, string> wanted = new(values.ToDictionary(StringComparer.Ordinal), StringComparer.Ordinal);
        foreach (string path in edit.Reset)
        {
            wanted.Remove(path);
        }

        foreach ((string path, string json) in edit.Set.Where(pair => faults.TrueForAll(fault => fault.Path != pair.Key)))
        {
            wanted[path] = json;
        }

        string text = SettingsMerge.Text(fileText, wanted);
        SettingsResult result = SettingsFile.Parse(text);

        // Lines of the merged text say nothing to a person who never sees it.
        faults.AddRange(result.Faults.Select(fault => fault with { Line = null }));
        if (result.Faults.Count == 0)
        {
            faults.AddRange(EditRules.Loosened(file, result.Settings));
        }

        IReadOnlyList<SettingsDifference> differences = Differences(now, result.Settings);
        Dictionary<string, string> effective = SettingsLeaf.Of(result.Settings).ToDictionary(leaf => leaf.Path, leaf => leaf.Json);
        foreach (string path in wanted.Keys.Where(path => effective[path] == own[path]).ToArray())
        {
            wanted.Remove(path);
        }

        return new EditOutcome(result.Settings, SettingsMerge.Text(fileText, wanted), wanted, faults, differences);
    }

    /// <summary>Where two settings differ, in the order of the table.</summary>
    public static IReadOnlyList<SettingsDifference> Differences(PileSettings was, PileSettings next) =>
        [.. SettingsLeaf.Of(was).Zip(SettingsLeaf.Of(next))
            .Where(pair => pair.First.Json != pair.Second.Json)
            .Select(pair => new SettingsDifference(pair.First.Path, pair.First.Json, pair.Second.Json))];

    private static SettingsFault? Refusal(string path, Dictionary<string, string> own, SettingsEdit edit)
    {
        if (!own.ContainsKey(path))
        {
            string? near = Nearest.Of(path, own.Keys);
            return new SettingsFault(path, "an unknown setting", near is null ? "a setting of the list" : $"the nearest known setting is \"{near}\"");
        }

        string given = edit.Set.TryGetValue(path, out string? json) ? json : "to go back";
        if (EditRules.WhyInTheFile(path) is { } why)
        {
            return new SettingsFault(path, given, $"a change in the file only: {why}");
        }

        return json is null || Readable(json) ? null : new SettingsFault(path, "not readable", "one JSON value");
    }

    private static bool Readable(string json)
    {
        try
        {
            JsonEntryReader.Read(json);
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
