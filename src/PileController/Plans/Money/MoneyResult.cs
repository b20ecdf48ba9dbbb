using PileController.Plans.Ahead;

namespace PileController.Plans.Money;

/// <summary>What the seasons ahead come to in money. Names are those of the JSON; sums in the grower's own money.</summary>
/// <param name="Money">Name or sign of the money.</param>
/// <param name="Fuels">What the useful heat of a season would cost by fuel.</param>
/// <param name="ReplacedFuel">The fuel the payback is reckoned against.</param>
/// <param name="ElectricityCost">Pump and blower in a season.</param>
/// <param name="ChipsCost">Chips and greens of a season.</param>
/// <param name="SavedASeason">The replaced fuel's cost less electricity and chips; below 0 the heap costs more than it saves.</param>
/// <param name="PaybackSeasons">Seasons until the parts that were bought are paid; null: never.</param>
/// <param name="Ledger">The parts.</param>
internal sealed record MoneyResult(
    string Money, IReadOnlyList<FuelCost> Fuels, string ReplacedFuel, Percentiles ElectricityCost, double ChipsCost,
    Percentiles SavedASeason, Percentiles PaybackSeasons, Ledger Ledger)
{
    /// <summary>Reckons it.</summary>
    /// <param name="prices">What the grower pays.</param>
    /// <param name="parts">The parts of the holding.</param>
    /// <param name="outcomes">What each season came to, one at least.</param>
    public static MoneyResult Of(Prices prices, IReadOnlyList<PlanPart> parts, IReadOnlyList<SeasonOutcome> outcomes)
    {
        double perHeatKWh = FuelChoice.ReplacedPerHeatKWh(prices);
        Ledger ledger = Ledger.Of(parts);
        double Electricity(SeasonOutcome o) => (o.PumpKWh + o.BlowerKWh) * prices.ElectricityPerKWh;
        double Saved(SeasonOutcome o) => (o.UsefulKWh * perHeatKWh) - Electricity(o) - prices.ChipsPerHeap;
        double? Payback(SeasonOutcome o) => Saved(o) > 0 ? ledger.BoughtTotal / Saved(o) : ledger.BoughtTotal > 0 ? null : 0;
        Percentiles useful = Percentiles.Of(outcomes.Select(o => o.UsefulKWh));
        return new MoneyResult(
            prices.Money,
            [.. FuelChoice.All(prices).Select(f => FuelCost.Of(f.Fuel, f.PricePerUnit, useful))],
            FuelChoice.All(prices).Single(f => f.Which == prices.Replaced).Fuel.Name,
            Percentiles.Of(outcomes.Select(Electricity)), prices.ChipsPerHeap, Percentiles.Of(outcomes.Select(Saved)),
            Percentiles.Of(outcomes.Select(Payback)), ledger);
    }
}

/// <summary>What the useful heat of a season would cost by one fuel.</summary>
/// <param name="Name">The fuel.</param>
/// <param name="SoldBy">Unit it is sold by.</param>
/// <param name="PricePerUnit">Price of that unit.</param>
/// <param name="PricePerHeatKWh">Price of a kWh of heat in the house.</param>
/// <param name="Units">How many units a season's useful heat would take.</param>
/// <param name="Cost">What they cost.</param>
/// <param name="Source">Where heat content and efficiency come from.</param>
internal sealed record FuelCost(
    string Name, string SoldBy, double PricePerUnit, double PricePerHeatKWh, Percentiles Units, Percentiles Cost, string Source)
{
    /// <summary>Reckons it.</summary>
    public static FuelCost Of(Fuel fuel, double pricePerUnit, Percentiles usefulKWh)
    {
        double perHeatKWh = Fuels.PricePerHeatKWh(fuel, pricePerUnit);
        return new FuelCost(
            fuel.Name, fuel.SoldBy, pricePerUnit, perHeatKWh, usefulKWh.Select(kWh => kWh / fuel.UsefulKWhPerUnit),
            usefulKWh.Select(kWh => kWh * perHeatKWh), fuel.Source);
    }
}

/// <summary>The parts, and what was paid for them.</summary>
/// <param name="Parts">All parts, bought and reused.</param>
/// <param name="BoughtTotal">What was paid.</param>
/// <param name="ReusedTotal">What reuse saved, at the price of new parts.</param>
internal sealed record Ledger(IReadOnlyList<PlanPart> Parts, double BoughtTotal, double ReusedTotal)
{
    /// <summary>Adds them up.</summary>
    public static Ledger Of(IReadOnlyList<PlanPart> parts) =>
        new(parts, parts.Where(p => !p.Reused).Sum(p => p.Price), parts.Where(p => p.Reused).Sum(p => p.Price));
}
