namespace PileController.Control.Allocation;

/// <summary>What the battery leaves for comfort, and for the blower against frost.</summary>
/// <param name="ComfortShare">Share of what comfort wants that it has to spare, 0 to 1.</param>
/// <param name="AirShare">The same for ducts that carry more heat for their power than the water does, 0 to 1.</param>
/// <param name="Briskness">How hard comfort may drive pump and blower, from 0, as gently as they go, to 1.</param>
/// <param name="FrostAirShare">Share of its full duty the blower may run at against frost, 0 to 1.</param>
internal readonly record struct BatteryLeave(double ComfortShare, double AirShare, double Briskness, double FrostAirShare)
{
    /// <summary>A full battery, or none that is read.</summary>
    public static BatteryLeave All => new(1, 1, 1, 1);
}
