namespace PileController.Plans.Money;

/// <summary>One line of the ledger of parts.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Price">What it cost; for a reused part what a new one would have cost.</param>
/// <param name="Reused">True when it was at hand already and nothing was paid.</param>
public sealed record PlanPart(string Name, double Price = 0, bool Reused = false)
{
    /// <summary>The parts of the demo holding, at prices made up for it.</summary>
    public static IReadOnlyList<PlanPart> AlderBank { get; } =
    [
        new("PEX pipe for the turns, 120 m", 160), new("steel drum", 90, true), new("circulating pump", 110),
        new("insulated line to the house", 95), new("pipe along the benches", 85, true), new("ducts and blower", 120, true),
        new("probes, flow meter and relays", 130), new("small computer", 80), new("battery and solar panel", 240, true),
        new("tank", 75, true),
    ];
}
