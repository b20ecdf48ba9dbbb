namespace PileController.Seasons;

/// <summary>
/// What a season came to. Names are those of the JSON. The least heap temperatures count from lighting (from day 20
/// when it never lit) and are null in a season that ends before. <c>NotMeasured</c> tells which weather was spread, estimated or assumed.
/// </summary>
internal sealed record SeasonResult(
    string Policy, int Days, long Ticks, double WallSeconds, double DrawnKWh, double MeteredDrawKWh, double UsefulKWh,
    double GeneratedKWh, double LostKWh, double StoredChangeKWh, double EnergyErrorFraction, double DryMassLostKg,
    double WaterLostKg, double ColdDegreeHours, double HoursBelowMinimum, double MinHouseC, double? MinActiveZoneC,
    double? MinTurnsC, double? LitOnDay, double HoursBelowFloor, double FrostGuardHours, double? StalledOnDay,
    double PumpKWh, double BlowerKWh, double BatteryHeldHours, double TrippedHours, IReadOnlyList<string> NotMeasured, TonightResult? Tonight)
{
    /// <summary>Ticks a second on one core.</summary>
    public double TicksPerSecond => Ticks / WallSeconds;
}
