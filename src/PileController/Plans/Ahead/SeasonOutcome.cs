using PileController.Physics.Heaps;

namespace PileController.Plans.Ahead;

/// <summary>What one drawn season came to.</summary>
/// <param name="Winter">Which of the winters it was run on, from 0.</param>
/// <param name="DrawnKWh">Heat drawn out of the heap.</param>
/// <param name="UsefulKWh">Heat the house was kept warmer by, at its set point.</param>
/// <param name="GeneratedKWh">Heat the microbes made.</param>
/// <param name="DegradableKg">Solids that microbes could burn, as drawn.</param>
/// <param name="ColdestC">Coldest hour in the house.</param>
/// <param name="HoursBelowMinimum">Hours in which the house was below its minimum.</param>
/// <param name="ColdDegreeHours">By how much and how long, K·h.</param>
/// <param name="LitOnDay">Day on which the heap lit, or null.</param>
/// <param name="FadedOnDay">Day on which it faded or stalled, or null.</param>
/// <param name="WaterLostKg">Water that left the heap, net of what was made.</param>
/// <param name="DryMassLostKg">Dry matter burnt.</param>
/// <param name="PumpKWh">Electricity of the pump.</param>
/// <param name="BlowerKWh">Electricity of the blower.</param>
/// <param name="EnergyErrorFraction">What the heap's energy balance misses, of what passed.</param>
/// <param name="TrippedHours">Hours in which a trip stopped the water: nobody clears one.</param>
internal sealed record SeasonOutcome(
    int Winter, double DrawnKWh, double UsefulKWh, double GeneratedKWh, double DegradableKg, double ColdestC,
    double HoursBelowMinimum, double ColdDegreeHours, double? LitOnDay, double? FadedOnDay, double WaterLostKg,
    double DryMassLostKg, double PumpKWh, double BlowerKWh, double EnergyErrorFraction, double TrippedHours = 0)
{
    private const double JoulesPerKWh = 3.6e6;

    /// <summary>The most heat its solids could give, kWh: degradable mass times the heat of degradation.</summary>
    public double MostHeatKWh => DegradableKg * Stuff.HeatPerSolids / JoulesPerKWh;
}
