namespace PileController.Records.Summaries;

/// <summary>How coarse a summary is. The names hold for ticks of 10 s; what counts is the number of ticks a row.</summary>
internal enum Tier
{
    /// <summary>6 ticks a row.</summary>
    Minute = 0,

    /// <summary>90 ticks a row.</summary>
    Quarter = 1,

    /// <summary>360 ticks a row.</summary>
    Hour = 2,

    /// <summary>8640 ticks a row.</summary>
    Day = 3,
}

/// <summary>The tiers, finest first. Each one's rows are whole numbers of rows of the one before.</summary>
internal static class Tiers
{
    private static readonly int[] Ticks = [6, 90, 360, 8640];

    /// <summary>All of them, finest first.</summary>
    public static IReadOnlyList<Tier> All { get; } = [Tier.Minute, Tier.Quarter, Tier.Hour, Tier.Day];

    /// <summary>Most ticks in a row of a tier.</summary>
    public static int TicksOf(Tier tier) => Ticks[(int)tier];
}
