using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using PileController.Physics.Hydraulics;
using PileController.Settings.Json;
using PileController.Units;

namespace PileController.Settings.Kinds;

/// <summary>A tube by its trade name, words in any order: "PEX 1/2 in".</summary>
internal sealed class TubeKind : ValueKind<PipeSize?>
{
    /// <inheritdoc/>
    public override string Allowed => $"one of {string.Join(", ", PipeSize.All.Select(size => $"\"{size.Name}\""))}";

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out PipeSize? value, [NotNullWhen(false)] out string? allowed)
    {
        value = entry.Kind == JsonValueKind.String ? PipeSize.Find(entry.Text) : null;
        string? near = value is null ? NearestTo(entry.Text) : null;
        allowed = value is not null ? null : near is null ? Allowed : $"{Allowed}; the nearest is \"{near}\"";
        return value is not null;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, PipeSize? value) => writer.WriteStringValue(value?.Name);

    // People put the kind first as often as the size, and leave out the inch.
    private static string? NearestTo(string given) => Nearest.Of(
        given, PipeSize.All.SelectMany(size => Spellings(size.Name).Select(spelling => new { size.Name, spelling })), pair => pair.spelling)?.Name;

    private static string[] Spellings(string name)
    {
        int cut = name.LastIndexOf(' ');
        string turned = $"{name[(cut + 1)..]} {name[..cut]}";
        return [name, turned, name.Replace(" in", "", StringComparison.Ordinal), turned.Replace(" in", "", StringComparison.Ordinal)];
    }
}
