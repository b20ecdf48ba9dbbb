namespace PileController.Plans.Ahead;

/// <summary>Hot water that someone wishes the heap would give all winter, to be judged.</summary>
public sealed record PlanWish
{
    /// <summary>Flow, L/min (0 for no wish, at most 1000).</summary>
    public double FlowLitresPerMinute { get; init; }

    /// <summary>Temperature of the water as it comes, °C (0 to 95).</summary>
    public double FromC { get; init; } = 10;

    /// <summary>Temperature it is to have, °C (0 to 95).</summary>
    public double ToC { get; init; } = 60;
}
