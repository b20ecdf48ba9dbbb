using System.Text.Json;
using PileController.Settings.Json;
using PileController.Settings.Kinds;

namespace PileController.Settings.Fields;

/// <summary>A key with a single value.</summary>
internal sealed class ValueField<TOwner, TValue>(
    string key, ValueKind<TValue> kind, Func<TOwner, TValue> get, Func<TOwner, TValue, TOwner> set, string doc, bool required)
    : Field<TOwner>(key, doc, required)
{
    /// <inheritdoc/>
    public override TOwner Read(TOwner owner, JsonEntry entry, string path, FileReading reading)
    {
        if (kind.TryRead(entry, out TValue value, out string? allowed))
        {
            return set(owner, value);
        }

        reading.Fault(path, entry, allowed);
        return owner;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, TOwner owner) => kind.Write(writer, get(owner));

    /// <inheritdoc/>
    public override void Explain(ExplainedText text, TOwner owner) =>
        text.Value($"{Doc} Allowed: {kind.Allowed}.", Key, w => kind.Write(w, get(owner)));

    /// <inheritdoc/>
    public override IEnumerable<FieldRow> Rows(string path) => [new(path, kind.Allowed, Doc)];
}
