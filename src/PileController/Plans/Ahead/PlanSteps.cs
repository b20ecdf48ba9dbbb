using PileController.Physics.Plants;

namespace PileController.Plans.Ahead;

/// <summary>The steps a season is run in.</summary>
/// <param name="TickSeconds">Length of the controller's tick, s.</param>
/// <param name="QuickSeconds">Longest quick step of the plant, s.</param>
internal readonly record struct PlanSteps(double TickSeconds, double QuickSeconds)
{
    /// <summary>As the controller and the shipped plant run, for comparison.</summary>
    public static PlanSteps Full => new(10, Plant.UsualQuickSeconds);

    /// <summary>As the season ahead runs: a table in DEVELOPERS.md and a test say how near it comes.</summary>
    public static PlanSteps Planning => new(60, 30);
}
