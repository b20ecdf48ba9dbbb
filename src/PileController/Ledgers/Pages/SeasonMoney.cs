using PileController.Ledgers.Counting;
using PileController.Plans.Money;

namespace PileController.Ledgers.Pages;

/// <summary>What a season saved, by an estimate. Names are those of the JSON; sums in the grower's own money.</summary>
/// <param name="Money">Name or sign of the money.</param>
/// <param name="Fuel">The fuel that the heat stands for.</param>
/// <param name="SoldBy">The unit it is sold by.</param>
/// <param name="PricePerUnit">Price of that unit.</param>
/// <param name="PricePerHeatKWh">Price of a kWh of heat in the house.</param>
/// <param name="HeatWorth">What all heat drawn would have cost.</param>
/// <param name="HeatWorthError">The part of the error band that the heat by water brings.</param>
/// <param name="ElectricityPerKWh">Price of electricity for pump and blower.</param>
/// <param name="ElectricityCost">What pump and blower cost.</param>
/// <param name="Saved">Heat less electricity.</param>
/// <param name="PartsPaid">What was paid for parts; not taken off.</param>
/// <param name="PartsReused">What reused parts would have cost new.</param>
internal sealed record SeasonMoney(
    string Money, string Fuel, string SoldBy, double PricePerUnit, double PricePerHeatKWh, double HeatWorth, double HeatWorthError,
    double ElectricityPerKWh, double ElectricityCost, double Saved, double PartsPaid, double PartsReused)
{
    /// <summary>Why it is an estimate.</summary>
    public const string Why =
        "An estimate: it takes all heat drawn as heat the fuel would have had to give, at one price for the whole season and a usual appliance's efficiency. A house that would have been kept cooler without the heap saved less.";

    /// <summary>Reckons it.</summary>
    public static SeasonMoney Of(SeasonEntry season, SpanSum sum)
    {
        Fuel fuel = Fuels.All.Single(f => f.Name == season.Fuel.Name);
        double perHeat = Fuels.PricePerHeatKWh(fuel, season.Fuel.PricePerUnit);
        double electricity = sum.ElectricityKWh * season.Fuel.ElectricityPerKWh;
        return new SeasonMoney(
            season.Fuel.Money, fuel.Name, fuel.SoldBy, season.Fuel.PricePerUnit, perHeat, sum.HeatKWh * perHeat,
            sum.WaterErrorKWh * perHeat, season.Fuel.ElectricityPerKWh, electricity, (sum.HeatKWh * perHeat) - electricity,
            season.Parts.Where(p => !p.Reused).Sum(p => p.Price), season.Parts.Where(p => p.Reused).Sum(p => p.Price));
    }
}
