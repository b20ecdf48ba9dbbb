using PileController.Panel.Now;
using PileController.Plans.Sketch;

namespace PileController.Panel.Planning;

/// <summary>One field that is tried otherwise.</summary>
internal sealed record ChangeBody(string Field, double Built, double Tried);

/// <summary>What a field may be.</summary>
internal sealed record LimitsBody(string Field, double Built, double Least, double Most);

/// <summary>The answer to a what-if: what was changed, the heap before and after, and what it gives. SI, the unit in the key.</summary>
/// <param name="Start">The day the season begins, yyyy-MM-dd.</param>
/// <param name="Days">How many days it has.</param>
/// <param name="Weather">Which weather it is reckoned on, in words.</param>
/// <param name="Changed">What is tried otherwise; empty for the heap as built.</param>
/// <param name="Limits">What each field is as built and may be.</param>
/// <param name="Built">The heap as built, for its drawing.</param>
/// <param name="Tried">The heap as tried, for its drawing.</param>
/// <param name="Sketch">What it gives.</param>
internal sealed record PlanBody(
    string Start, int Days, string Weather, IReadOnlyList<ChangeBody> Changed, IReadOnlyList<LimitsBody> Limits,
    HeapBody Built, HeapBody Tried, PlanSketch Sketch);
