using System.Collections;
using System.Text.Json;
using PileController.Settings.Json;
using PileController.Settings.Kinds;
using PileController.Units;

namespace PileController.Settings.Fields;

/// <summary>The keys of one section, one row each. Add a row to add a setting.</summary>
/// <typeparam name="T">The record the section is read into.</typeparam>
internal sealed class FieldTable<T> : IEnumerable<Field<T>>
{
    private readonly List<Field<T>> _fields = [];

    /// <summary>Adds a single value.</summary>
    public void Add<TValue>(
        string key, ValueKind<TValue> kind, Func<T, TValue> get, Func<T, TValue, T> set, string doc, bool required = false) =>
        _fields.Add(new ValueField<T, TValue>(key, kind, get, set, doc, required));

    /// <summary>Adds a section of its own.</summary>
    public void Add<TSub>(string key, FieldTable<TSub> table, Func<T, TSub> get, Func<T, TSub, T> set, string doc) =>
        _fields.Add(new SectionField<T, TSub>(key, table, get, set, doc));

    /// <summary>Adds a list; each item starts as <paramref name="blank"/>, and what is <paramref name="understood"/> need not be written.</summary>
    public void Add<TItem>(
        string key, FieldTable<TItem> table, TItem blank, Func<TItem, TItem> understood,
        Func<T, IReadOnlyList<TItem>> get, Func<T, IReadOnlyList<TItem>, T> set, string doc) =>
        _fields.Add(new ListField<T, TItem>(key, table, blank, understood, get, set, doc));

    /// <summary>Tells which keys came after records were kept; see <see cref="Field{T}.Later"/>.</summary>
    public FieldTable<T> LaterAre(params IReadOnlyList<string> keys)
    {
        foreach (string key in keys)
        {
            _fields.Single(f => f.Key == key).Later = true;
        }

        return this;
    }

    /// <summary>Reads a section over <paramref name="start"/>; keys not given keep what it has.</summary>
    public T Read(T start, JsonEntry entry, string path, FileReading reading)
    {
        if (entry.Kind != JsonValueKind.Object)
        {
            reading.Fault(path, entry, "a section in braces { }");
            return start;
        }

        T result = start;
        Dictionary<string, int> seen = [];
        foreach (JsonMember member in entry.Members)
        {
            string memberPath = path.Length == 0 ? member.Key : $"{path}.{member.Key}";
            if (!seen.TryAdd(member.Key, member.Line))
            {
                reading.Faults.Add(new SettingsFault(
                    memberPath, "given twice", $"once; it stands on line {seen[member.Key]} already", member.Line));
            }
            else if (_fields.Find(f => f.Key == member.Key) is Field<T> field)
            {
                reading.Saw(memberPath, member.Value);
                result = field.Read(result, member.Value, memberPath, reading);
            }
            else
            {
                reading.Faults.Add(new SettingsFault(memberPath, "an unknown key", KnownKeys(member.Key), member.Line));
            }
        }

        foreach (Field<T> missing in _fields.Where(f => f.Required && !seen.ContainsKey(f.Key)))
        {
            reading.Faults.Add(new SettingsFault(
                path.Length == 0 ? missing.Key : $"{path}.{missing.Key}", "missing", missing.Rows("").First().Allowed, entry.Line));
        }

        return result;
    }

    /// <summary>Writes the section.</summary>
    public void Write(Utf8JsonWriter writer, T owner)
    {
        writer.WriteStartObject();
        foreach (Field<T> field in _fields)
        {
            writer.WritePropertyName(field.Key);
            field.Write(writer, owner);
        }

        writer.WriteEndObject();
    }

    /// <summary>Writes the section for the mark of the settings: without later keys that say what <paramref name="plain"/> says.</summary>
    public void WriteMark(Utf8JsonWriter writer, T owner, T plain)
    {
        writer.WriteStartObject();
        foreach (Field<T> field in _fields.Where(field => !field.Later || Differs(field, owner, plain)))
        {
            writer.WritePropertyName(field.Key);
            field.WriteMark(writer, owner, plain);
        }

        writer.WriteEndObject();
    }

    /// <summary>Writes only the keys whose value is not that of <paramref name="plain"/>, required ones always.</summary>
    public void WriteDifference(Utf8JsonWriter writer, T owner, T plain)
    {
        writer.WriteStartObject();
        foreach (Field<T> field in _fields)
        {
            if (field.Required || Differs(field, owner, plain))
            {
                writer.WritePropertyName(field.Key);
                field.Write(writer, owner);
            }
        }

        writer.WriteEndObject();
    }

    /// <summary>Every value of the section, in order.</summary>
    public IEnumerable<FieldRow> Rows(string path) =>
        _fields.SelectMany(f => f.Rows(path.Length == 0 ? f.Key : $"{path}.{f.Key}"));

    /// <inheritdoc/>
    public IEnumerator<Field<T>> GetEnumerator() => _fields.GetEnumerator();

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private static bool Differs(Field<T> field, T owner, T plain) =>
        JsonText.Of(w => field.Write(w, owner)) != JsonText.Of(w => field.Write(w, plain));

    private string KnownKeys(string given)
    {
        string[] keys = [.. _fields.Select(f => f.Key)];
        return Nearest.Of(given, keys) is string near
            ? $"the nearest known key is \"{near}\""
            : $"one of {string.Join(", ", keys)}";
    }
}
