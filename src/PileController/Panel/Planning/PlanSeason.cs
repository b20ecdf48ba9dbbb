using PileController.Simulation;

namespace PileController.Panel.Planning;

/// <summary>The season the page's what-ifs are reckoned over.</summary>
internal static class PlanSeason
{
    /// <summary>Days from building: a winter.</summary>
    public const int Days = 150;

    /// <summary>Which weather, in words for people.</summary>
    public const string Weather = "the winter of 2025 to 2026 in the weather that ships with the program";

    /// <summary>The day the heap is built.</summary>
    public static DateOnly Start => Demo.Built;
}
