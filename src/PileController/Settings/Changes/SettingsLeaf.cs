using System.Text.Json;

namespace PileController.Settings.Changes;

/// <summary>One value of the settings.</summary>
/// <param name="Path">Where it stands: "control.house.minimum". A list is one value.</param>
/// <param name="Json">The value as one line of JSON.</param>
internal sealed record SettingsLeaf(string Path, string Json)
{
    /// <summary>Every value of some settings, in the order of the table.</summary>
    public static IReadOnlyList<SettingsLeaf> Of(PileSettings settings)
    {
        List<SettingsLeaf> leaves = [];
        using JsonDocument document = JsonDocument.Parse(settings.CanonicalJson());
        Gather(document.RootElement, "", leaves);
        return leaves;
    }

    private static void Gather(JsonElement element, string path, List<SettingsLeaf> leaves)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            leaves.Add(new SettingsLeaf(path, element.GetRawText()));
            return;
        }

        foreach (JsonProperty member in element.EnumerateObject())
        {
            Gather(member.Value, path.Length == 0 ? member.Name : $"{path}.{member.Name}", leaves);
        }
    }
}
