using PileController.Control.Decisions;

namespace PileController.Records.Queries;

/// <summary>One figure of a decision that the record keeps as a series.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Unit">W, °C, or empty for a share.</param>
/// <param name="PerUnit">Steps a unit to which the kept figure is rounded; the exact one comes back by replay.</param>
/// <param name="Of">Takes it from a decision.</param>
internal sealed record DecisionFigure(string Name, string Unit, double PerUnit, Func<Decision, double> Of);

/// <summary>The figures of a decision that are kept, in the order of their columns.</summary>
internal static class DecisionSeries
{
    public static IReadOnlyList<DecisionFigure> All { get; } =
    [
        new("want", "W", 10, d => d.WantWatts),
        new("means", "W", 10, d => d.MeansWatts),
        new("grant", "W", 10, d => d.GrantWatts),
        new("waterDraw", "W", 10, d => d.Draw.WaterWatts),
        new("waterError", "W", 10, d => d.Draw.WaterErrorWatts),
        new("airDraw", "W", 10, d => d.Draw.AirWatts),
        new("activeZone", "°C", 1000, d => d.Estimate.ActiveZoneCelsius),
        new("setPoint", "°C", 1000, d => d.HouseSetPointCelsius),
        new("pumpDuty", "", 10_000, d => d.Outputs.PumpDuty),
        new("valveOpening", "", 10_000, d => d.Outputs.ValveOpening),
        new("blowerDuty", "", 10_000, d => d.Outputs.BlowerDuty),
        new("generation", "W", 10, d => d.Estimate.GenerationWatts),
    ];
}
