using System.Diagnostics.CodeAnalysis;
using PileController.Access;

namespace PileController.Commands.Access;

/// <summary>Reads a passphrase: twice and unseen from a terminal, or one line from a pipe.</summary>
internal static class TypedSecret
{
    /// <summary>Reads it.</summary>
    /// <returns>False when it is not allowed; <paramref name="fault"/> then says why, and never what was typed.</returns>
    public static bool TryRead(out string passphrase, [NotNullWhen(false)] out string? fault)
    {
        passphrase = Console.IsInputRedirected ? Console.In.ReadLine() ?? "" : Ask("New passphrase: ");
        fault = !PassphraseRules.Allows(passphrase) ? $"The passphrase has {passphrase.Length} characters, or some that cannot be typed; allowed: {PassphraseRules.Allowed}."
            : !Console.IsInputRedirected && Ask("Once more: ") != passphrase ? "The two are not the same; nothing is changed."
            : null;
        return fault is null;
    }

    private static string Ask(string question)
    {
        // On the error stream: what the command answers may go into a file.
        Console.Error.Write(question);
        List<char> typed = [];
        while (Console.ReadKey(intercept: true) is { Key: not ConsoleKey.Enter } key)
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

        Console.Error.WriteLine();
        return new string([.. typed]);
    }
}
