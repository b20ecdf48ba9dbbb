using System.Text.Json;

namespace PileController.Settings.Json;

/// <summary>One value of a settings file with the line it stands on.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Given">How to quote it to its writer.</param>
/// <param name="Text">The text of a string or number, unquoted; empty for others.</param>
/// <param name="Members">Keys and values of an object, in order, doubles included.</param>
/// <param name="Items">Items of a list.</param>
internal sealed record JsonEntry(
    JsonValueKind Kind, int Line, string Given, string Text,
    IReadOnlyList<JsonMember> Members, IReadOnlyList<JsonEntry> Items);

/// <summary>One key of an object.</summary>
/// <param name="Key">As written.</param>
/// <param name="Line">Line of the key, from 1.</param>
/// <param name="Value">Its value.</param>
internal readonly record struct JsonMember(string Key, int Line, JsonEntry Value);
