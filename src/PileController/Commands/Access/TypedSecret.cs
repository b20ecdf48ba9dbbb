using System.Diagnostics.CodeAnalysis;
using PileController.Access;

namespace PileController.Commands.Access;

/// <summary>Reads a passphrase: twice and unseen from a terminal, or one line from a pipe.</summary>
internal static class TypedSecret
{
    /// <summary>Reads it.</summary>
    /// <returns>False when it is not allowed; <paramref name="fault"/> then says why, and never what was typed.</returns>
    public static bool TryRead(out string passphrase, [NotNullWhen(false)] out string? fault) =>
        TryRead(Console.IsInputRedirected ? null : () => Console.ReadKey(intercept: true), Console.In, Console.Error, out passphrase, out fault);

    /// <summary>Reads it.</summary>
    /// <param name="keys">The keys of a terminal, one by one and shown nowhere; null where there is none.</param>
    /// <param name="pipe">Read where there is no terminal.</param>
    /// <param name="ask">Where it is asked for: not where the command answers, which may go into a file.</param>
    /// <param name="passphrase">What was typed.</param>
    /// <param name="fault">Why it is not allowed.</param>
    internal static bool TryRead(
        Func<ConsoleKeyInfo>? keys, TextReader pipe, TextWriter ask, out string passphrase, [NotNullWhen(false)] out string? fault)
    {
        passphrase = keys is null ? pipe.ReadLine() ?? "" : Ask("New passphrase: ", keys, ask);
        fault = !PassphraseRules.Allows(passphrase) ? $"The passphrase has {passphrase.Length} characters, or some that cannot be typed; allowed: {PassphraseRules.Allowed}."
            : keys is not null && Ask("Once more: ", keys, ask) != passphrase ? "The two are not the same; nothing is changed."
            : null;
        return fault is null;
    }

    private static string Ask(string question, Func<ConsoleKeyInfo> keys, TextWriter ask)
    {
        ask.Write(question);
        List<char> typed = [];
        while (keys() is { Key: not ConsoleKey.Enter } key)
        {
            if (key.Key == ConsoleKey.Backspace)
            {
                typed.RemoveRange(Math.Max(0, typed.Count - 1), Math.Min(1, typed.Count));
            }
            else if (key.KeyChar != '\0')
            {
                typed.Add(key.KeyChar);
            }
        }

        ask.WriteLine();
        return new string([.. typed]);
    }
}
