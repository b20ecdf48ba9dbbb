using PileController.Records.Summaries;

namespace PileController.Records.Storage;

/// <summary>A kind of file of the store. Each kind outlives the one before; files are deleted whole or never.</summary>
/// <param name="Prefix">What its name begins with; then comes the number of its first tick.</param>
/// <param name="Collections">Its collections. Heads are kept in the first, which every entry is part of.</param>
internal sealed record FileKind(string Prefix, IReadOnlyList<string> Collections)
{
    private const string Ending = ".pile";
    private const string Unfinished = ".making";

    /// <summary>Blocks of ticks and the lines of their decisions.</summary>
    public static readonly FileKind Ticks = new("ticks", ["blocks", "decisions"]);

    /// <summary>The finest summaries of days of ticks.</summary>
    public static readonly FileKind Minutes = new("minutes", ["minutes"]);

    /// <summary>What is kept of days of ticks for ever, in the order of <see cref="LastingPart"/>.</summary>
    public static readonly FileKind Lasting = new("lasting", ["days", "hours", "quarters", "decisions", "texts"]);

    /// <summary>Whether a plain name is one of a finished file of any kind.</summary>
    public static bool IsAny(string name) => name.EndsWith(Ending, StringComparison.Ordinal);

    /// <summary>Whether a plain name is left over from a file that was being made.</summary>
    public static bool IsUnfinished(string name) => name.Contains(Ending + Unfinished, StringComparison.Ordinal);

    /// <summary>Whether a plain name is one of a finished file of this kind.</summary>
    public bool Holds(string name) => IsAny(name) && name.StartsWith(Prefix + "-", StringComparison.Ordinal);

    /// <summary>The name of a file that begins at a tick.</summary>
    public string NameOf(long firstSequence) => $"{Prefix}-{firstSequence:D12}{Ending}";

    /// <summary>What a file is called until it is whole.</summary>
    public static string WhileMaking(string name) => name + Unfinished;
}

/// <summary>Where the parts of a day of ticks lie in a file that lasts.</summary>
internal static class LastingPart
{
    public const int Decisions = 3;
    public const int Text = 4;

    /// <summary>Where the rows of a tier lie.</summary>
    public static int Of(Tier tier) => Tier.Day - tier;
}
