using PileController.Plans.Money;

namespace PileController.Ledgers.Editing;

/// <summary>What heat would have cost otherwise, from the settings' prices and what a person changes of it.</summary>
internal static class LedgerFuel
{
    /// <summary>As the settings have it.</summary>
    public static FuelEntry Of(Prices prices, Hand by)
    {
        (_, Fuel fuel, double price) = FuelChoice.All(prices).Single(f => f.Which == prices.Replaced);
        return new FuelEntry(fuel.Name, price, prices.ElectricityPerKWh, prices.Money, by);
    }

    /// <summary>With what was given changed; NaN and null for what was not. A new fuel without a price has the settings' price.</summary>
    /// <exception cref="LedgerRefusedException">The settings have no price of that fuel and none was given.</exception>
    public static FuelEntry Changed(
        FuelEntry fuel, string? name, Prices prices, double pricePerUnit, double electricityPerKWh, string? money, Hand by)
    {
        bool other = name is not null && name != fuel.Name;
        double price = !double.IsNaN(pricePerUnit) ? pricePerUnit : other ? Told(prices, name!) : fuel.PricePerUnit;
        FuelEntry changed = fuel with
        {
            Name = name ?? fuel.Name,
            PricePerUnit = price,
            ElectricityPerKWh = double.IsNaN(electricityPerKWh) ? fuel.ElectricityPerKWh : electricityPerKWh,
            Money = money ?? fuel.Money,
        };
        return changed == fuel ? fuel : changed with { By = by };
    }

    private static double Told(Prices prices, string name)
    {
        foreach ((_, Fuel fuel, double price) in FuelChoice.All(prices))
        {
            if (fuel.Name == name)
            {
                return price;
            }
        }

        throw new LedgerRefusedException($"pricePerUnit: nothing is not allowed, the settings have no price of {name}. Allowed: a number from 0 to {LedgerLimits.MostPrice:F0}.");
    }
}
