using PileController.Plans.Ahead;
using PileController.Plans.Money;

namespace PileController.Settings;

/// <summary>What a plan of the season ahead is told beyond the holding itself. Prices are made up for the demo.</summary>
public sealed record PlanSettings
{
    /// <summary>How far heap, house and winter may lie from what the settings say.</summary>
    public Spreads Spreads { get; init; } = new();

    /// <summary>What the grower pays.</summary>
    public Prices Prices { get; init; } = new();

    /// <summary>The parts of the holding and where they came from.</summary>
    public IReadOnlyList<PlanPart> Parts { get; init; } = PlanPart.AlderBank;

    /// <summary>Hot water that someone wishes the heap would give all winter.</summary>
    public PlanWish Wish { get; init; } = new();
}
