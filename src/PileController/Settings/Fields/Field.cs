using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Fields;

/// <summary>One key of one section: how it is read into its record, written, and explained.</summary>
/// <typeparam name="TOwner">The record it belongs to; never changed, always copied.</typeparam>
/// <param name="key">The key.</param>
/// <param name="doc">What it means, in a sentence.</param>
/// <param name="required">Whether it must be given where its section is given.</param>
internal abstract class Field<TOwner>(string key, string doc, bool required = false)
{
    public string Key => key;

    public string Doc => doc;

    public bool Required => required;

    /// <summary>
    /// Whether records were kept before there was this key: it is left out of the mark while it has the value it takes when
    /// left out, so that settings kept by an earlier build keep their mark.
    /// </summary>
    public bool Later { get; set; }

    /// <summary>A copy of the owner with what stands in the file; the owner itself where that is faulty.</summary>
    public abstract TOwner Read(TOwner owner, JsonEntry entry, string path, FileReading reading);

    /// <summary>Writes the value, not the key.</summary>
    public abstract void Write(Utf8JsonWriter writer, TOwner owner);

    /// <summary>Writes the value for the mark of the settings.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="owner">The settings.</param>
    /// <param name="plain">What they are where nothing is told.</param>
    public virtual void WriteMark(Utf8JsonWriter writer, TOwner owner, TOwner plain) => Write(writer, owner);

    /// <summary>Writes key and value with their explanation.</summary>
    public abstract void Explain(ExplainedText text, TOwner owner);

    /// <summary>Every value below this key.</summary>
    public abstract IEnumerable<FieldRow> Rows(string path);
}
