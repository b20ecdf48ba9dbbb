namespace PileController.Ledgers.Editing;

/// <summary>What entries of the book may be, for calls and commands alike.</summary>
internal static class LedgerLimits
{
    /// <summary>Most of one part.</summary>
    public const double MostCount = 10_000;

    /// <summary>Highest price, in any money.</summary>
    public const double MostPrice = 1_000_000;

    /// <summary>Least mass, kg.</summary>
    public const double LeastKilograms = 1;

    /// <summary>Most mass, kg.</summary>
    public const double MostKilograms = 1_000_000;

    /// <summary>Longest name of a person, a season or a part, characters.</summary>
    public const int LongestName = 60;

    /// <summary>Longest word on who did it, characters.</summary>
    public const int LongestWho = 40;

    /// <summary>Longest word on how a mass is known, characters.</summary>
    public const int LongestHow = 200;

    /// <summary>Longest note, characters.</summary>
    public const int LongestNote = 2000;
}
