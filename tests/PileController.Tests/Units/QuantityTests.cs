using CsCheck;
using PileController.Units;

namespace PileController.Tests.Units;

public class QuantityTests
{
    [Theory]
    [InlineData("4 L/min", Dimension.Flow, 4 / 60000.0)]
    [InlineData("4L/min", Dimension.Flow, 4 / 60000.0)]
    [InlineData("40 cfm", Dimension.Flow, 40 * 0.028316846592 / 60)]
    [InlineData("120 °F", Dimension.Temperature, 322.0388888888889)]
    [InlineData("120 F", Dimension.Temperature, 322.0388888888889)]
    [InlineData("120 degF", Dimension.Temperature, 322.0388888888889)]
    [InlineData("120 deg F", Dimension.Temperature, 322.0388888888889)]
    [InlineData("45 °C", Dimension.Temperature, 318.15)]
    [InlineData("-5 °C", Dimension.Temperature, 268.15)]
    [InlineData("\u22125 °C", Dimension.Temperature, 268.15)]
    [InlineData("318.15 K", Dimension.Temperature, 318.15)]
    [InlineData("5 K", Dimension.TemperatureDifference, 5)]
    [InlineData("9 °F", Dimension.TemperatureDifference, 5)]
    [InlineData("30 ft", Dimension.Length, 9.144)]
    [InlineData("18 in", Dimension.Length, 0.4572)]
    [InlineData("10 short ton", Dimension.Mass, 9071.8474)]
    [InlineData("62 m2", Dimension.Area, 62)]
    [InlineData("62 m²", Dimension.Area, 62)]
    [InlineData("2e-9 m2", Dimension.Area, 2e-9)]
    [InlineData("2 kW", Dimension.Power, 2000)]
    [InlineData("208 L", Dimension.Volume, 0.208)]
    [InlineData("3.3 W/m2K", Dimension.Transmittance, 3.3)]
    [InlineData("3.3 W/(m²·K)", Dimension.Transmittance, 3.3)]
    [InlineData("220 W/K", Dimension.Conductance, 220)]
    [InlineData("20 MJ/K", Dimension.HeatCapacity, 2e7)]
    [InlineData("90 s", Dimension.Time, 90)]
    [InlineData("10 min", Dimension.Time, 600)]
    [InlineData("48 h", Dimension.Time, 172_800)]
    [InlineData("0.75 1/h", Dimension.Rate, 0.75 / 3600)]
    [InlineData("12 V", Dimension.Voltage, 12)]
    [InlineData("101325 Pa", Dimension.Pressure, 101_325)]
    [InlineData("450 1/L", Dimension.PulsesPerVolume, 450_000)]
    [InlineData("30 %", Dimension.Share, 0.3)]
    [InlineData("0.05 W/mK", Dimension.Conductivity, 0.05)]
    public void Quantity_WrittenByAPerson_IsReadInSi(string text, Dimension dimension, double si)
    {
        Assert.True(Quantity.TryParse(text, dimension, out Quantity quantity, out string? problem), problem);
        Assert.Equal(si, quantity.Si, Math.Abs(si) * 1e-14);
    }

    [Theory]
    [InlineData("4", Dimension.Flow, "a flow needs its unit, for example \"4 L/min\"")]
    [InlineData("4 L/mn", Dimension.Flow, "unknown unit \"L/mn\", the nearest known is \"L/min\"")]
    [InlineData("4 kg", Dimension.Flow, "a flow is expected, for example \"4 L/min\"; \"kg\" is the unit of a mass")]
    [InlineData("5 m", Dimension.TemperatureDifference, "a temperature difference is expected, for example \"5 K\"")]
    [InlineData("about 4 L/min", Dimension.Flow, "a number with its unit")]
    [InlineData("", Dimension.Length, "a number with its unit")]
    [InlineData("1,5 m", Dimension.Length, "a decimal point")]
    [InlineData("1e20 m", Dimension.Length, "at most 1e12")]
    [InlineData("5 mJ", Dimension.Energy, "unknown unit \"mJ\"")]
    [InlineData("5 quux", Dimension.Length, "unknown unit \"quux\"; a length is written for example")]
    public void Quantity_NotUnderstood_SaysWhatWouldBeRight(string text, Dimension expected, string words)
    {
        Assert.False(Quantity.TryParse(text, expected, out _, out string? problem));
        Assert.Contains(words, problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Quantity_InItsOwnUnit_IsTheNearestDouble() =>
        Gen.Select(Gen.Double[1e-9, 1e9], Gen.Bool, (size, minus) => minus ? -size : size).Sample(value =>
        {
            Assert.True(Quantity.TryParse($"{value:R} m", Dimension.Length, out Quantity quantity, out _));
            return quantity.In(UnitTable.Of("m", Dimension.Length)) == value;
        });

    [Fact]
    public void Quantity_WrittenInAnyUnitOfItsDimension_ReadsBackTheSameNumber()
    {
        (Unit Stored, Unit Written)[] pairs =
        [
            .. from stored in UnitTable.All
               from written in UnitTable.All
               where stored.Dimension == written.Dimension
               select (stored, written),
        ];
        Gen.Select(Gen.Int[0, pairs.Length - 1], Gen.Double[0.001, 100]).Sample((pair, value) =>
        {
            (Unit stored, Unit written) = pairs[pair];
            string text = Quantity.Exactly(value, stored, written).ToString();
            Assert.True(Quantity.TryParse(text, stored.Dimension, out Quantity quantity, out string? problem), problem);
            Assert.Equal(value, quantity.In(stored), Math.Abs(value) * 1e-12);
        });
    }

    [Fact]
    public void Quantity_InAUnitOfAnotherDimension_Throws() =>
        Assert.Throws<ArgumentException>(() =>
            new Quantity(1, UnitTable.Of("m", Dimension.Length)).In(UnitTable.Of("kg", Dimension.Mass)));
}
