namespace PileController.Plans.Money;

/// <summary>Which fuel at which price, from what the grower says he pays.</summary>
internal static class FuelChoice
{
    /// <summary>Every fuel that has a price, with it; in the order of <see cref="ReplacedFuel"/>.</summary>
    public static IReadOnlyList<(ReplacedFuel Which, Fuel Fuel, double PricePerUnit)> All(Prices prices) =>
    [
        (ReplacedFuel.Propane, Named("propane"), prices.PropanePerGallon),
        (ReplacedFuel.Oil, Named("heating oil"), prices.OilPerGallon),
        (ReplacedFuel.Electricity, Named("electricity"), prices.ElectricityPerKWh),
        (ReplacedFuel.Cordwood, Named("cordwood"), prices.CordwoodPerCord),
    ];

    /// <summary>Price of a kWh of heat in the house from the fuel that the heap saves.</summary>
    public static double ReplacedPerHeatKWh(Prices prices)
    {
        (_, Fuel fuel, double price) = All(prices).Single(f => f.Which == prices.Replaced);
        return Fuels.PricePerHeatKWh(fuel, price);
    }

    private static Fuel Named(string name) => Fuels.All.Single(f => f.Name == name);
}
