using PileController.Plans.Ahead;
using PileController.Plans.Money;

namespace PileController.Tests.Plans.Money;

public class MoneyResultTests
{
    private static readonly PlanPart[] Parts = [new("pump", 110), new("pipe", 190), new("drum", 90, true)];

    [Fact]
    public void Cost_OfTwoKilowattsForAHalfYearOfPropane_IsThePublishedAmount()
    {
        // FUE-012: 358.6 US gal displaced by 2 kW for 180 days, 8640 kWh at 90 % (computed from US EIA's 91 333 BTU/US gal).
        MoneyResult money = MoneyResult.Of(new Prices { PropanePerGallon = 2 }, Parts, [Season(8640)]);
        FuelCost propane = money.Fuels.Single(f => f.Name == "propane");
        Assert.Equal(358.6, propane.Units.P50!.Value, 0.001 * 358.6);
        Assert.Equal(2 * 358.6, propane.Cost.P50!.Value, 0.001 * 2 * 358.6);
    }

    [Fact]
    public void Payback_OfTheParts_CountsWhatWasBoughtOnly()
    {
        Prices prices = new() { Replaced = ReplacedFuel.Electricity, ElectricityPerKWh = 0.2, ChipsPerHeap = 40 };
        MoneyResult money = MoneyResult.Of(prices, Parts, [Season(1000, electricKWh: 50)]);

        Assert.Equal(300, money.Ledger.BoughtTotal);
        Assert.Equal(90, money.Ledger.ReusedTotal);

        // 1000 kWh at 0.2 less 50 kWh at 0.2 less 40 for chips.
        Assert.Equal(150, money.SavedASeason.P50!.Value, 1e-9);
        Assert.Equal(2, money.PaybackSeasons.P50!.Value, 1e-9);
    }

    [Fact]
    public void Payback_OfAHeapThatCostsMoreThanItSaves_IsNever()
    {
        MoneyResult money = MoneyResult.Of(new Prices { ChipsPerHeap = 5000 }, Parts, [Season(1000), Season(2000)]);
        Assert.True(money.SavedASeason.P90 < 0);
        Assert.Equal(new Percentiles(null, null, null), money.PaybackSeasons);
    }

    [Fact]
    public void Payback_OfReusedPartsOnly_IsAtOnce() =>
        Assert.Equal(0, MoneyResult.Of(new Prices(), [new("drum", 90, true)], [Season(1000)]).PaybackSeasons.P50);

    [Theory]
    [InlineData(ReplacedFuel.Propane, "propane")]
    [InlineData(ReplacedFuel.Oil, "heating oil")]
    [InlineData(ReplacedFuel.Electricity, "electricity")]
    [InlineData(ReplacedFuel.Cordwood, "cordwood")]
    public void Saved_AgainstAnyFuel_IsItsCostLessElectricityAndChips(ReplacedFuel fuel, string name)
    {
        MoneyResult money = MoneyResult.Of(new Prices { Replaced = fuel }, Parts, [Season(1000)]);
        Assert.Equal(name, money.ReplacedFuel);
        Assert.Equal(money.Fuels.Single(f => f.Name == name).Cost.P50!.Value, money.SavedASeason.P50!.Value, 1e-9);
    }

    private static SeasonOutcome Season(double usefulKWh, double electricKWh = 0) =>
        new(0, usefulKWh, usefulKWh, usefulKWh, 1000, 0, 0, 0, 9, null, 0, 0, electricKWh, 0, 0);
}
