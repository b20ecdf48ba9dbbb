using PileController.Units;

namespace PileController.Tests.Units;

/// <summary>
/// Factors against published values: GNU units definitions (Debian package units) for all rows but the BTU itself,
/// which is from memory (1055.05585262 J, the International Table BTU).
/// </summary>
public class UnitFactorTests
{
    [Theory]
    [InlineData("1 BTU/lb°F", Dimension.SpecificHeat, 4186.8, 1e-9)]
    [InlineData("1 BTU/(h·ft²·°F)", Dimension.Transmittance, 5.67826334111, 1e-9)]
    [InlineData("1 BTU/(h·ft·°F)", Dimension.Conductivity, 1.73073466637, 1e-9)]
    [InlineData("1 gal", Dimension.Volume, 3.785411784e-3, 1e-9)]
    [InlineData("1 imp gal", Dimension.Volume, 4.54609e-3, 1e-9)]
    [InlineData("1 psi", Dimension.Pressure, 6894.75729317, 1e-9)]
    [InlineData("1 in water", Dimension.Pressure, 249.08891, 1e-9)]
    [InlineData("1 hp", Dimension.Power, 745.699871582, 1e-9)]
    [InlineData("1 ft³/min", Dimension.Flow, 1.69901079552 / 3600, 1e-9)]
    [InlineData("1 ft3", Dimension.Volume, 0.028316846592, 1e-9)]
    [InlineData("1 cord", Dimension.Volume, 3.62455636378, 1e-9)]
    [InlineData("1 short ton", Dimension.Mass, 907.18474, 1e-9)]
    [InlineData("1 lb", Dimension.Mass, 0.45359237, 1e-9)]
    [InlineData("1 BTU/h", Dimension.Power, 0.293071070172, 1e-9)]
    [InlineData("1 BTU", Dimension.Energy, 1055.05585262, 1e-15)]
    [InlineData("1 therm", Dimension.Energy, 105.4804e6, 1e-6)]

    // By definition from the rows above: 1 lb over 27 ft³, 5280 ft an hour.
    [InlineData("1 lb/yd3", Dimension.Density, 0.45359237 / (27 * 0.028316846592), 1e-12)]
    [InlineData("1 lb/ft3", Dimension.Density, 0.45359237 / 0.028316846592, 1e-12)]
    [InlineData("1 mph", Dimension.Speed, 0.44704, 1e-12)]
    [InlineData("1 fpm", Dimension.Speed, 0.00508, 1e-12)]

    // R values of glazings, ft²·h·°F/BTU, from a published list of R values: 0.95, 2.0, 1.54, 1.69; U = 1/R.
    [InlineData("1.052631579 BTU/hft2°F", Dimension.Transmittance, 5.98, 2e-3)]
    [InlineData("0.5 BTU/hft2°F", Dimension.Transmittance, 2.84, 2e-3)]
    [InlineData("0.649350649 BTU/hft2°F", Dimension.Transmittance, 3.69, 2e-3)]
    [InlineData("0.591715976 BTU/hft2°F", Dimension.Transmittance, 3.36, 2e-3)]
    public void Unit_OfThePublishedTable_HasItsFactor(string one, Dimension dimension, double si, double relative)
    {
        Assert.True(Quantity.TryParse(one, dimension, out Quantity quantity, out string? problem), problem);
        Assert.Equal(si, quantity.Si, si * relative);
    }

    [Fact]
    public void Unit_EverySpelling_MeansOneUnitOfItsDimension()
    {
        foreach (Unit unit in UnitTable.All)
        {
            foreach (string spelling in unit.OtherSpellings.Append(unit.Symbol))
            {
                Assert.True(Quantity.TryParse($"2 {spelling}", unit.Dimension, out Quantity read, out string? problem), problem);
                Assert.Equal(unit, read.Unit);
            }
        }
    }

    [Fact]
    public void Unit_OfEveryDimension_ReadsTheDimensionsOwnExample()
    {
        foreach (Dimension dimension in Enum.GetValues<Dimension>())
        {
            Assert.True(Quantity.TryParse(DimensionTable.Of(dimension).Example, dimension, out _, out string? problem), problem);
        }
    }
}
