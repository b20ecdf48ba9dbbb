namespace PileController.Plans.Money;

/// <summary>A fuel that heats houses where there is no heap.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="SoldBy">The unit it is sold by.</param>
/// <param name="HeatKWhPerUnit">Heat in one such unit, higher heating value, kWh.</param>
/// <param name="Efficiency">Share of that heat which a usual appliance gives the house, 0 to 1.</param>
/// <param name="Source">Where both figures are from.</param>
internal sealed record Fuel(string Name, string SoldBy, double HeatKWhPerUnit, double Efficiency, string Source)
{
    /// <summary>Heat that a unit gives the house, kWh.</summary>
    public double UsefulKWhPerUnit => HeatKWhPerUnit * Efficiency;
}
