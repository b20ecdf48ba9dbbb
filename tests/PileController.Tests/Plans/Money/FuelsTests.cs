using PileController.Plans.Money;

namespace PileController.Tests.Plans.Money;

public class FuelsTests
{
    private const double KWhPerBtu = 0.293071070172e-3;

    [Theory]

    // US EIA Btu conversion factors (2012 averages), 2 %.
    [InlineData("propane", 91_333)]
    [InlineData("heating oil", 138_690)]
    [InlineData("electricity", 3412)]
    [InlineData("cordwood", 20_000_000)]
    [InlineData("natural gas", 100_000)]

    // US EIA energy conversion calculators (2021), 2 %.
    [InlineData("heating oil", 137_381)]
    public void Fuel_HeatOfAUnit_IsThePublishedAverage(string name, double btuPerUnit)
    {
        // 1 BTU/h = 0.293071070172 W (GNU units).
        double published = btuPerUnit * KWhPerBtu;
        Assert.Equal(published, Named(name).HeatKWhPerUnit, 0.02 * published);
    }

    [Fact]
    public void Propane_HeatOfAGallon_IsThePublishedConversion() =>

        // 26.767 kWh/US gal from 91 333 BTU/US gal (computed from the EIA figure), 1e-4.
        Assert.Equal(26.767, Named("propane").HeatKWhPerUnit, 26.767e-4);

    [Fact]
    public void Propane_HeatOfALitre_IsThePublishedConversion() =>

        // 25.456 MJ/L from 91 333 BTU/US gal (computed from the EIA figure), 1e-4; 1 US gal = 3.785411784 L (GNU units).
        Assert.Equal(25.456, Named("propane").HeatKWhPerUnit * 3.6 / 3.785411784, 25.456e-4);

    [Fact]
    public void Propane_ForTwoKilowattsOfASeason_IsThePublishedNumberOfGallons() =>

        // 358.6 US gal for 2 kW over 180 days at 90 % (computed from the EIA figure), 1e-3.
        Assert.Equal(358.6, 8640 / Named("propane").UsefulKWhPerUnit, 0.3586);

    [Fact]
    public void Price_OfPropaneAtTwoFifty_IsWhatAPersonWouldDivide() =>
        Assert.Equal(2.50 / (26.767 * 0.90), Fuels.PricePerHeatKWh(Named("propane"), 2.50), 1e-4);

    [Fact]
    public void Price_OfElectricity_IsThatOfTheMeter() =>
        Assert.Equal(0.17, Fuels.PricePerHeatKWh(Named("electricity"), 0.17), 12);

    [Theory]
    [InlineData(-0.01)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Price_ThatIsNone_IsRefusedByName(double price)
    {
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(() => Fuels.PricePerHeatKWh(Named("cordwood"), price));
        Assert.Contains("cord of cordwood must be 0 or more", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Fuels_All_NameTheirSourceAndGiveNoMoreThanTheyHold() => Assert.All(Fuels.All, fuel =>
    {
        Assert.InRange(fuel.Efficiency, 0.1, 1);
        Assert.Contains("efficiency: common practice, no source", fuel.Source, StringComparison.Ordinal);
        Assert.True(fuel.UsefulKWhPerUnit <= fuel.HeatKWhPerUnit);
    });

    private static Fuel Named(string name) => Fuels.All.Single(f => f.Name == name);
}
