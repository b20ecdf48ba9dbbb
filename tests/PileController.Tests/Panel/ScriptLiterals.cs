using System.Text;
using System.Text.RegularExpressions;

namespace PileController.Tests.Panel;

/// <summary>One string or template of a script; a value put into a template stands in it as "#".</summary>
/// <param name="Text">What is written.</param>
/// <param name="Call">The function it is handed to, or "".</param>
/// <param name="Place">Which argument of it, from 0.</param>
/// <param name="Before">What stands before it on its line.</param>
internal sealed record ScriptLiteral(string Text, string Call, int Place, string Before);

/// <summary>Reads the literals out of a script: as much of the language as tells them from comments and regular expressions.</summary>
internal sealed partial class ScriptLiterals
{
    private readonly string _script;
    private readonly List<ScriptLiteral> _found = [];
    private readonly Stack<(string Call, int Place)> _open = new([("", 0)]);
    private int _at;

    private ScriptLiterals(string script) => _script = script;

    /// <summary>The literals in their order; what stands within a template comes before it.</summary>
    public static IReadOnlyList<ScriptLiteral> Of(string script)
    {
        ScriptLiterals reader = new(script);
        reader.Code(script.Length);
        return reader._found;
    }

    // Up to the end, or to the brace that ends a value within a template.
    private void Code(int end)
    {
        int depth = _open.Count;
        while (_at < end)
        {
            char one = _script[_at];
            if (one == '}' && _open.Count == depth && depth > 1)
            {
                return;
            }

            if (one is '"' or '\'' or '`')
            {
                Literal(one);
            }
            else if (!Skipped(one))
            {
                Bracket(one);
                _at++;
            }
        }
    }

    private void Bracket(char one)
    {
        switch (one)
        {
            case '(':
                string name = Name().Match(_script[Math.Max(0, _at - 40).._at]).Value;
                _open.Push(name.Length == 0 ? _open.Peek() : (name, 0));
                break;
            case '[' or '{':
                _open.Push(("", 0));
                break;
            case ')' or ']' or '}':
                _open.Pop();
                break;
            case ',':
                (string call, int place) = _open.Pop();
                _open.Push((call, place + 1));
                break;
        }
    }

    private bool Skipped(char one)
    {
        Match match = one == '/' ? Comment().Match(_script, _at) : Match.Empty;
        if (one == '/' && !match.Success && MayBeginPattern().IsMatch(_script[Math.Max(0, _at - 40).._at]))
        {
            match = Pattern().Match(_script, _at);
        }

        _at += match.Length;
        return match.Length > 0;
    }

    private void Literal(char quote)
    {
        string before = _script[(_script.LastIndexOf('\n', _at) + 1).._at];
        (string call, int place) = _open.Peek();
        StringBuilder text = new();
        for (_at++; _script[_at] != quote; _at++)
        {
            if (_script[_at] == '\\')
            {
                bool code = _script[_at + 1] == 'u';
                text.Append(code ? ' ' : _script[_at + 1]);
                _at += code ? 5 : 1;
            }
            else if (quote == '`' && _script.AsSpan(_at).StartsWith("${"))
            {
                _at += 2;
                _open.Push((call, place));
                Code(_script.Length);
                _open.Pop();
                text.Append('#');
            }
            else
            {
                text.Append(_script[_at]);
            }
        }

        _at++;
        _found.Add(new ScriptLiteral(text.ToString(), call, place, before));
    }

    // The name right before a bracket; after nothing, or after a word of the language, the bracket only groups.
    [GeneratedRegex(@"(?<!\w)(?!(?:if|for|while|switch|return|catch|await)$)\w+$")]
    private static partial Regex Name();

    [GeneratedRegex(@"\G(?://[^\n]*|/\*.*?\*/)", RegexOptions.Singleline)]
    private static partial Regex Comment();

    [GeneratedRegex(@"(?:[(,=:\[!&|?{};]|return)\s*$")]
    private static partial Regex MayBeginPattern();

    [GeneratedRegex(@"\G/(?:\\.|\[(?:\\.|[^\]\\])*\]|[^/\\\n])+/")]
    private static partial Regex Pattern();
}
