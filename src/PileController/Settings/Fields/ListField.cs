using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Fields;

/// <summary>
/// A key with a list of sections. A list that is given replaces the default one as a whole. An item starts as
/// <paramref name="blank"/>; keys at which it is no more than <paramref name="understood"/> are left out where people read.
/// </summary>
internal sealed class ListField<TOwner, TItem>(
    string key, FieldTable<TItem> table, TItem blank, Func<TItem, TItem> understood,
    Func<TOwner, IReadOnlyList<TItem>> get, Func<TOwner, IReadOnlyList<TItem>, TOwner> set, string doc)
    : Field<TOwner>(key, doc)
{
    /// <inheritdoc/>
    public override TOwner Read(TOwner owner, JsonEntry entry, string path, FileReading reading)
    {
        if (entry.Kind != JsonValueKind.Array)
        {
            reading.Fault(path, entry, "a list in brackets [ ]");
            return owner;
        }

        List<TItem> items = [];
        foreach (JsonEntry item in entry.Items)
        {
            string itemPath = $"{path}[{items.Count}]";
            reading.Saw(itemPath, item);
            items.Add(table.Read(blank, item, itemPath, reading));
        }

        return set(owner, items);
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, TOwner owner)
    {
        writer.WriteStartArray();
        foreach (TItem item in get(owner))
        {
            table.Write(writer, item);
        }

        writer.WriteEndArray();
    }

    /// <inheritdoc/>
    public override void WriteMark(Utf8JsonWriter writer, TOwner owner, TOwner plain)
    {
        writer.WriteStartArray();
        foreach (TItem item in get(owner))
        {
            table.WriteMark(writer, item, blank);
        }

        writer.WriteEndArray();
    }

    /// <inheritdoc/>
    public override void Explain(ExplainedText text, TOwner owner)
    {
        text.Open(Doc, Key, '[');
        foreach (FieldRow row in table.Rows(""))
        {
            text.Comment($"{row.Path}: {row.Doc} Allowed: {row.Allowed}.");
        }

        foreach (TItem item in get(owner))
        {
            text.Item(w => table.WriteDifference(w, item, understood(item)));
        }

        text.Close(']');
    }

    /// <inheritdoc/>
    public override IEnumerable<FieldRow> Rows(string path) => table.Rows($"{path}[]");
}
