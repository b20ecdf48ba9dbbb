using PileController.Control;
using PileController.Records.Accounts;

namespace PileController.Panel.Nights;

/// <summary>What the house was not to fall below, as it was set then: hours that are past are not judged by today's.</summary>
internal static class MinimumThen
{
    /// <summary>The minimum at a moment in UTC milliseconds, °C. Pure but for what is asked of <paramref name="controlOf"/>.</summary>
    /// <param name="blocks">The record's blocks, in order.</param>
    /// <param name="controlOf">What control was told, by the hash of the settings; null where nobody knows.</param>
    /// <param name="nowC">The minimum now: for a block whose settings are not known, and where there is no block.</param>
    public static Func<long, double> Of(IReadOnlyList<BlockAccount> blocks, Func<string, ControlSettings?> controlOf, double nowC)
    {
        Dictionary<string, double> known = blocks.Select(block => block.SettingsHash).Distinct()
            .ToDictionary(hash => hash, hash => controlOf(hash)?.HouseMinimumC ?? nowC);
        return utc => blocks.Count == 0
            ? nowC
            : known[(blocks.LastOrDefault(block => block.FirstUtcMilliseconds <= utc) ?? blocks[0]).SettingsHash];
    }
}
