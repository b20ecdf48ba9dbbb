namespace PileController.Access;

/// <summary>What a passphrase may be.</summary>
internal static class PassphraseRules
{
    /// <summary>Least length, characters.</summary>
    public const int Shortest = 10;

    /// <summary>Greatest length, characters.</summary>
    public const int Longest = 200;

    /// <summary>What is allowed, in words.</summary>
    public static string Allowed => $"{Shortest} to {Longest} characters without control characters; several words that do not belong together serve well";

    /// <summary>Whether a text may be a passphrase.</summary>
    public static bool Allows(string text) => text.Length is >= Shortest and <= Longest && !text.Any(char.IsControl);
}
