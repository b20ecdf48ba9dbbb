using PileController.Physics.Heaps;

namespace PileController.Physics.Plants;

/// <summary>One week of a trial: means over it.</summary>
/// <param name="Week">1 for the first.</param>
/// <param name="Days">Days it has, 7 but for the last.</param>
/// <param name="GeneratedWatts">Heat made, W.</param>
/// <param name="LostWatts">Heat lost by skin, ground and draught, W.</param>
/// <param name="DrawnWatts">Heat taken by water and air, W.</param>
/// <param name="ActiveZoneC">Active zone, °C.</param>
/// <param name="TurnsC">Shell that holds the turns, °C.</param>
/// <param name="MoistureFraction">Water's share of the wet mass at its end.</param>
/// <param name="WettedKg">Water given to the heap, kg.</param>
/// <param name="OxygenShare">Oxygen taken over oxygen carried in; near 1 the heap is short of air.</param>
public sealed record TrialWeek(
    int Week, double Days, double GeneratedWatts, double LostWatts, double DrawnWatts, double ActiveZoneC, double TurnsC,
    double MoistureFraction, double WettedKg, double OxygenShare);

/// <summary>What a heap gave in a trial.</summary>
/// <param name="Days">How long it ran.</param>
/// <param name="Ledger">All that entered, left or was made, J and kg.</param>
/// <param name="StoredChangeJ">Heat stored in body and drum at the end less that at the start, J.</param>
/// <param name="WettingJ">Enthalpy of the water given to it, J above 0 °C.</param>
/// <param name="WettedKg">Water given to it, kg.</param>
/// <param name="WaterLostKg">Water lost on balance, wetting not counted as gain, kg.</param>
/// <param name="LitOnDay">Day on which the active zone had been hot enough for 24 h; null when it never was.</param>
/// <param name="FadesOnDay">First day after lighting when the 7-day mean of heat made falls below half of its best; null when it never does.</param>
/// <param name="DriesOnDay">First day on which the moisture is below the published band's 40 %; null when it never is.</param>
/// <param name="HottestC">Highest temperature of the active zone, °C.</param>
/// <param name="Weeks">Week by week.</param>
public sealed record HeapTrialResult(
    double Days, HeapLedger Ledger, double StoredChangeJ, double WettingJ, double WettedKg, double WaterLostKg,
    double? LitOnDay, double? FadesOnDay, double? DriesOnDay, double HottestC, IReadOnlyList<TrialWeek> Weeks)
{
    /// <summary>Heat drawn, mean over the whole trial, W.</summary>
    public double DrawnWatts => Ledger.DrawnJ / (Days * 86_400);

    /// <summary>Heat made, mean over the whole trial, W.</summary>
    public double GeneratedWatts => Ledger.GeneratedJ / (Days * 86_400);

    /// <summary>Heat the water took, mean over the whole trial, W.</summary>
    public double WaterWatts => (Ledger.CoilJ + Ledger.DrumJ) / (Days * 86_400);
}
