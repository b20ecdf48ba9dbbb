using System.Text;
using System.Text.Json;

namespace PileController.Settings.Fields;

/// <summary>Builds a settings file with a comment over every key. Trailing commas are allowed, so every line ends alike.</summary>
internal sealed class ExplainedText
{
    private readonly StringBuilder _text = new();
    private int _depth;

    public void Open(string doc, string? key, char bracket)
    {
        if (key is not null && _text[^2] is not ('{' or '['))
        {
            _text.Append('\n');
        }

        Comment(doc);
        Line(key is null ? $"{bracket}" : $"\"{key}\": {bracket}");
        _depth++;
    }

    public void Close(char bracket)
    {
        _depth--;
        Line(_depth == 0 ? $"{bracket}" : $"{bracket},");
    }

    public void Value(string doc, string key, Action<Utf8JsonWriter> write)
    {
        Comment(doc);
        Line($"\"{key}\": {JsonText.Of(write)},");
    }

    public void Item(Action<Utf8JsonWriter> write) => Line($"{JsonText.Of(write)},");

    public void Comment(string doc) => Line($"// {doc}");

    /// <summary>The whole file.</summary>
    public override string ToString() => _text.ToString();

    private void Line(string text) => _text.Append(' ', 2 * _depth).Append(text).Append('\n');
}
