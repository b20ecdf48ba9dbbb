using PileController.Units;

namespace PileController.Tests.Units;

public class ShowTests
{
    // Expected values by the definitions checked in UnitFactorTests.
    public static TheoryData<string, string, string> Rows => new()
    {
        { Show.Temperature(60, UnitSystem.Metric), Show.Temperature(60, UnitSystem.Us), "60.0 °C|140.0 °F" },
        { Show.Temperature(-40, UnitSystem.Metric), Show.Temperature(-40, UnitSystem.Us), "-40.0 °C|-40.0 °F" },
        { Show.Difference(5, UnitSystem.Metric), Show.Difference(5, UnitSystem.Us), "5.0 K|9.0 °F" },
        { Show.Power(1000, UnitSystem.Metric), Show.Power(1000, UnitSystem.Us), "1000 W|3412 BTU/h" },
        { Show.Power(13188, UnitSystem.Metric), Show.Power(13188, UnitSystem.Us), "13.19 kW|44999 BTU/h" },
        { Show.Energy(1, UnitSystem.Metric), Show.Energy(1, UnitSystem.Us), "1.00 kWh|3412 BTU" },
        { Show.WaterFlow(3.785411784, UnitSystem.Metric), Show.WaterFlow(3.785411784, UnitSystem.Us), "3.79 L/min|1.00 gal/min" },
        { Show.AirFlow(0.04, UnitSystem.Metric), Show.AirFlow(0.04, UnitSystem.Us), "144 m3/h|85 ft3/min" },
        { Show.Length(9.144, UnitSystem.Metric), Show.Length(9.144, UnitSystem.Us), "9.14 m|30.0 ft" },
        { Show.Volume(208.2, UnitSystem.Metric), Show.Volume(208.2, UnitSystem.Us), "208 L|55 gal" },
        { Show.Mass(9000, UnitSystem.Metric), Show.Mass(9000, UnitSystem.Us), "9000 kg|19842 lb" },
    };

    [Theory]
    [MemberData(nameof(Rows))]
    public void Show_AValue_WritesItInBothSystems(string metric, string us, string expected) =>
        Assert.Equal(expected, $"{metric}|{us}");

    [Theory]
    [InlineData(90, "90 s")]
    [InlineData(600, "10 min")]
    [InlineData(172_799, "48 h")]
    [InlineData(259_200, "3 d")]
    public void Show_ATime_UsesTheUnitPeopleWouldSay(double seconds, string expected) =>
        Assert.Equal(expected, Show.Time(seconds));

    [Fact]
    public void Show_ASmallNegative_HasNoMinusBeforeZero() =>
        Assert.Equal("0.0 °C", Show.Temperature(-0.04, UnitSystem.Metric));

    [Fact]
    public void Show_NoNumber_IsADash() => Assert.Equal("—", Show.Power(double.NaN, UnitSystem.Us));

    [Fact]
    public void Show_Both_PutsMetricFirst() =>
        Assert.Equal("60.0 °C (140.0 °F)", Show.Both(s => Show.Temperature(60, s)));
}
