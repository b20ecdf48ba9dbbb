using System.CommandLine;
using System.CommandLine.Parsing;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;
using PileController.Settings.Json;
using PileController.Settings.Kinds;
using PileController.Units;

namespace PileController.Commands.Shell;

/// <summary>Options that check their value while the command line is read, so that a wrong one is wrong use.</summary>
internal static class Ask
{
    /// <summary>Reads one text; null and what is allowed when it is wrong.</summary>
    public delegate bool Reader<T>(string text, out T value, [NotNullWhen(false)] out string? allowed);

    /// <summary>The option every command with an answer has.</summary>
    public static Option<bool> Json() => new("--json") { Description = "Answer in JSON for machines (SI, unit in the key)." };

    /// <summary>A physical quantity with its unit.</summary>
    public static Option<double> Quantity(string name, string description, string unit, Dimension dimension, double least, double most)
    {
        Unit stored = UnitTable.Of(unit, dimension);
        QuantityKind kind = new(stored, stored, least, most);
        return Of<double>(name, $"{description} {kind.Allowed}, in any unit.", Read(kind));
    }

    /// <summary>A bare number.</summary>
    public static Option<double> Number(string name, string description, double least, double most, string meaning) =>
        Of(name, $"{description} {least:R} to {most:R} {meaning}.", (string text, out double value, [NotNullWhen(false)] out string? allowed) =>
        {
            bool good = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value)
                && value >= least && value <= most;
            allowed = good ? null : $"{least:R} to {most:R} {meaning}";
            return good;
        });

    /// <summary>A whole number; the description says its limits.</summary>
    public static Option<int> Whole(string name, string description, int least, int most) =>
        Of(name, description, (string text, out int value, [NotNullWhen(false)] out string? allowed) =>
        {
            bool good = int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out value)
                && value >= least && value <= most;
            allowed = good ? null : $"a whole number from {least} to {most}";
            return good;
        });

    /// <summary>One word of a list.</summary>
    public static Option<T> Word<T>(string name, string description, params IReadOnlyList<(string Word, T Meaning)> words) =>
        Of(name, $"{description} {string.Join(" or ", words.Select(w => w.Word))}.", Read(new WordKind<T>(words)));

    /// <summary>A value of a kind that files know too.</summary>
    public static Option<T> Kind<T>(string name, string description, ValueKind<T> kind) =>
        Of(name, $"{description} {kind.Allowed}.", Read(kind));

    /// <summary>The same, given as often as there are values.</summary>
    public static Option<T[]> Several<T>(string name, string description, ValueKind<T> kind) => new(name)
    {
        Description = $"{description} {kind.Allowed}. May be given several times.",
        Arity = ArgumentArity.OneOrMore,
        AllowMultipleArgumentsPerToken = false,
        CustomParser = result => [.. result.Tokens.Select(token => Parse(name, result, token.Value, Read(kind))!)],
        DefaultValueFactory = _ => [],
    };

    /// <summary>Any option with a reader of its own.</summary>
    public static Option<T> Of<T>(string name, string description, Reader<T> read) => new(name)
    {
        Description = description,
        Arity = ArgumentArity.ExactlyOne,
        CustomParser = result => Parse(name, result, result.Tokens[^1].Value, read),
    };

    /// <summary>The same option, now one that must be given.</summary>
    public static Option<T> Needed<T>(this Option<T> option)
    {
        option.Required = true;
        return option;
    }

    /// <summary>The same option, with the value it has when it is not given.</summary>
    public static Option<T> Unless<T>(this Option<T> option, T otherwise)
    {
        option.DefaultValueFactory = _ => otherwise;
        return option;
    }

    private static T? Parse<T>(string name, ArgumentResult result, string given, Reader<T> read)
    {
        if (read(given, out T value, out string? allowed))
        {
            return value;
        }

        result.AddError($"{name} is \"{given}\"; allowed: {allowed}");
        return default;
    }

    private static Reader<T> Read<T>(ValueKind<T> kind) =>
        (string text, out T value, [NotNullWhen(false)] out string? allowed) =>
            kind.TryRead(new JsonEntry(JsonValueKind.String, 1, text, text, [], []), out value, out allowed);
}
