using PileController.Control.Readings;
using PileController.Rigs.Hardware.I2c;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Tests.Hardware.I2c;

public class ResistorThermometerTests
{
    private const double Excitation = 3.3;

    private static readonly ProbeWiring Platinum = new() { Sensor = ResistorKind.Pt1000, ReferenceOhms = 2200 };

    private static readonly ProbeWiring Thermistor =
        new() { Sensor = ResistorKind.Ntc, ReferenceOhms = 10_000, OhmsAt25C = 10_000, BetaKelvin = 3950 };

    // IEC 60751 table of Pt100 in steps of 10 °C, as printed at sensorsci.com/reference.htm and in
    // scribd.com/document/366724594; a Pt1000 has ten times as much. The table ends at 0.01 Ω, 0.026 K.
    [Theory]
    [InlineData(80.31, -50)]
    [InlineData(84.27, -40)]
    [InlineData(88.22, -30)]
    [InlineData(92.16, -20)]
    [InlineData(96.09, -10)]
    [InlineData(100.00, 0)]
    [InlineData(103.90, 10)]
    [InlineData(107.79, 20)]
    [InlineData(115.54, 40)]
    [InlineData(119.40, 50)]
    [InlineData(123.24, 60)]
    [InlineData(130.90, 80)]
    [InlineData(138.51, 100)]
    [InlineData(146.07, 120)]
    public void PlatinumCelsius_OfTheTablesOhms_IsTheTablesTemperature(double tableOhms, double celsius) =>
        Assert.Equal(celsius, ResistorThermometer.PlatinumCelsius(10 * tableOhms), 0.015);

    // Far below what the rig measures, where the cubic part matters: the same table at -100 and -200 °C.
    [Theory]
    [InlineData(60.26, -100)]
    [InlineData(18.52, -200)]
    public void PlatinumCelsius_DeepCold_FollowsTheTableToo(double tableOhms, double celsius) =>
        Assert.Equal(celsius, ResistorThermometer.PlatinumCelsius(10 * tableOhms), 0.015);

    // The B value is defined by two points: B = ln(R25/R85) / (1/298.15 - 1/358.15). From it, 10 kΩ at B25/85 3950 K
    // has 1086.7 Ω at 85 °C; and at 25 °C it has what it is named by.
    [Theory]
    [InlineData(10_000, 25)]
    [InlineData(1086.71, 85)]
    public void ThermistorCelsius_OfThePointsThatDefineB_IsTheirTemperature(double ohms, double celsius) =>
        Assert.Equal(celsius, ResistorThermometer.ThermistorCelsius(ohms, 10_000, 3950), 0.01);

    [Theory]
    [InlineData(1000.0, 0)]
    [InlineData(1194.0, 50)]
    public void Of_PlatinumInADivider_DoesNotHangOnTheExcitation(double ohms, double celsius)
    {
        foreach (double excitation in new[] { 2.5, 3.3, 3.6 })
        {
            double volts = excitation * ohms / (ohms + 2200);
            Measured measured = ResistorThermometer.Of(Platinum, volts, excitation);
            Assert.Equal(ReadingQuality.Good, measured.Quality);
            Assert.Equal(celsius, measured.Value, 0.02);
        }
    }

    [Fact]
    public void Of_ThermistorInADivider_ColdIsNotABrokenWire()
    {
        // -30 °C: some 200 kΩ over 10 kΩ, 95 % of the divider's voltage.
        double ohms = 10_000 * Math.Exp(3950 * ((1 / 243.15) - (1 / 298.15)));
        Measured measured = ResistorThermometer.Of(Thermistor, Excitation * ohms / (ohms + 10_000), Excitation);

        Assert.Equal(ReadingQuality.Good, measured.Quality);
        Assert.Equal(-30, measured.Value, 0.01);
    }

    [Theory]
    [InlineData(3.3, 3.3, ReadingQuality.NoAnswer)]
    [InlineData(3.29, 3.3, ReadingQuality.NoAnswer)]
    [InlineData(0.0, 3.3, ReadingQuality.Shorted)]
    [InlineData(-0.01, 3.3, ReadingQuality.Shorted)]
    [InlineData(1.0, 0.1, ReadingQuality.NoAnswer)]
    [InlineData(0.05, 3.3, ReadingQuality.OutOfRange)]
    [InlineData(2.9, 3.3, ReadingQuality.OutOfRange)]
    [InlineData(null, 3.3, ReadingQuality.NoAnswer)]
    [InlineData(1.0, null, ReadingQuality.NoAnswer)]
    public void Of_DividerThatIsNotSound_SaysWhy(double? volts, double? excitation, ReadingQuality quality)
    {
        Measured measured = ResistorThermometer.Of(Platinum, volts, excitation);

        Assert.Equal(quality, measured.Quality);
        Assert.True(double.IsFinite(measured.Value));
    }

    [Fact]
    public void Of_OneStepOfTheConverter_IsBelowTheChannelsGrain()
    {
        // At 60 °C with 2.2 kΩ; with a larger reference the step grows and the sensor warms less.
        double ohms = 1232.4;
        double volts = Excitation * ohms / (ohms + 2200);
        double step = ResistorThermometer.Of(Platinum, volts + Ads1115.VoltsPerStep, Excitation).Value
            - ResistorThermometer.Of(Platinum, volts, Excitation).Value;

        Assert.InRange(step, 0.03, ChannelTable.Of(Channel.HeapCore).Quantum);
    }
}
