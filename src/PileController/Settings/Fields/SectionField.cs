using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Fields;

/// <summary>A key with keys of its own.</summary>
internal sealed class SectionField<TOwner, TSub>(
    string key, FieldTable<TSub> table, Func<TOwner, TSub> get, Func<TOwner, TSub, TOwner> set, string doc)
    : Field<TOwner>(key, doc)
{
    /// <inheritdoc/>
    public override TOwner Read(TOwner owner, JsonEntry entry, string path, FileReading reading) =>
        set(owner, table.Read(get(owner), entry, path, reading));

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, TOwner owner) => table.Write(writer, get(owner));

    /// <inheritdoc/>
    public override void WriteMark(Utf8JsonWriter writer, TOwner owner, TOwner plain) =>
        table.WriteMark(writer, get(owner), get(plain));

    /// <inheritdoc/>
    public override void Explain(ExplainedText text, TOwner owner)
    {
        text.Open(Doc, Key, '{');
        foreach (Field<TSub> field in table)
        {
            field.Explain(text, get(owner));
        }

        text.Close('}');
    }

    /// <inheritdoc/>
    public override IEnumerable<FieldRow> Rows(string path) => table.Rows(path);
}
