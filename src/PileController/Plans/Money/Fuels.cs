using PileController.Units;

namespace PileController.Plans.Money;

/// <summary>The fuels a heap stands against. Heat contents are published averages, efficiencies common practice.</summary>
internal static class Fuels
{
    private const double BtuPerKWh = (double)(1000 * Factors.Hour / Factors.Btu);
    private const string Averages2012 = "US EIA Btu conversion factors (2012 averages)";
    private const string Averages2021 = "US EIA energy conversion calculators (2021)";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Fuel> All { get; } =
    [
        OfBtu("propane", "gal", 91_333, 0.90, Averages2012),
        OfBtu("heating oil", "gal", 137_381, 0.85, Averages2021),
        OfBtu("electricity", "kWh", BtuPerKWh, 1.00, "1 kWh by definition"),
        OfBtu("cordwood", "cord", 20_000_000, 0.65, Averages2012),
        OfBtu("natural gas", "therm", 100_000, 0.90, Averages2012),
    ];

    /// <summary>Price of a kilowatt-hour of heat in the house, in the currency of the price given.</summary>
    /// <param name="fuel">The fuel.</param>
    /// <param name="pricePerUnit">Price of one unit as sold, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A price below 0 or none at all.</exception>
    public static double PricePerHeatKWh(Fuel fuel, double pricePerUnit) =>
        pricePerUnit is >= 0 and <= double.MaxValue
            ? pricePerUnit / fuel.UsefulKWhPerUnit
            : throw new ArgumentOutOfRangeException(nameof(pricePerUnit), pricePerUnit, $"The price of a {fuel.SoldBy} of {fuel.Name} must be 0 or more; given {pricePerUnit}.");

    private static Fuel OfBtu(string name, string soldBy, double btuPerUnit, double efficiency, string heatSource) =>
        new(name, soldBy, btuPerUnit / BtuPerKWh, efficiency, $"heat: {heatSource}; efficiency: common practice, no source");
}
