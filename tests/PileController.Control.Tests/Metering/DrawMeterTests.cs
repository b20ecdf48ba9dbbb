using PileController.Control.Decisions;
using PileController.Control.Metering;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Metering;

public sealed class DrawMeterTests
{
    private const double LitresPerGallon = 3.785412;
    private static readonly ControlSettings Settings = new();
    private static readonly Outputs Running = new(0.5, 1, 0, false);

    /// <summary>
    /// Heat coefficient of EN 1434 with the meter in the return: k = heat / (volume × temperature difference).
    /// SEN-056, SEN-058, SEN-060: computed with iapws 1.5.2 (implements IAPWS-IF97) at 1.6 MPa, rel 1e-4. Here the water
    /// lies on its saturation line, which leaves the enthalpy difference up to 2e-4 and the density 7e-4 lower: rel 1e-3.
    /// </summary>
    [Theory]
    [InlineData(60, 30, 4.16066)]
    [InlineData(50, 40, 4.14557)]
    [InlineData(60, 55, 4.12143)]
    public void Of_FlowAndPair_HasTheHeatCoefficientOfAMeterInTheReturn(double supply, double back, double megajoulesPerM3K)
    {
        MeteredDraw draw = DrawMeter.Of(Settings, Loop(6, supply, back), Running);

        double coefficient = draw.WaterWatts / (6 / 60_000.0) / (supply - back) / 1e6;
        Assert.Equal(megajoulesPerM3K, coefficient, 1e-3 * megajoulesPerM3K);
        Assert.False(draw.Inferred);
    }

    /// <summary>
    /// WAT-075: 13.188 kW for 1 US gal/min from 10 to 60 °C metered at the 10 °C side, rel 1e-3, computed with iapws 1.5.2
    /// (IAPWS-IF97). The flow reaches the meter in quanta of 1/64 L/min, which is scaled out.
    /// </summary>
    [Fact]
    public void Of_OneGallonFromTenToSixty_IsThirteenKilowatts()
    {
        RigReadings readings = Loop(LitresPerGallon, 60, 10);
        readings.TryGet(Channel.Flow, out double counted);

        double watts = DrawMeter.Of(Settings, readings, Running).WaterWatts * LitresPerGallon / counted;

        Assert.Equal(13_188, watts, 13.188);
    }

    /// <summary>
    /// SEN-062: 264 W from 1 K at 1 US gal/min (rel 1 %; computed): a pair error of 1 K is that band, beside the meter's own.
    /// </summary>
    [Fact]
    public void Of_UnmatchedPair_CarriesItsErrorBand()
    {
        ControlSettings unmatched = Settings with { PairErrorKelvin = 1, FlowErrorShare = 0 };

        Assert.Equal(264, DrawMeter.Of(unmatched, Loop(LitresPerGallon, 60, 10), Running).WaterErrorWatts, 2.64);
    }

    [Fact]
    public void Of_SupplyColderThanReturn_IsHeatPutIn() =>
        Assert.True(DrawMeter.Of(Settings, Loop(2, 30, 40), Running).WaterWatts < -1000);

    [Fact]
    public void Of_NoFlow_IsNoDraw() => Assert.Equal(new MeteredDraw(0, 0, 0, 0, false), DrawMeter.Of(Settings, Loop(0, 60, 10), Running));

    [Theory]
    [InlineData(Channel.Supply)]
    [InlineData(Channel.Return)]
    public void Of_OneProbeOfThePairMissing_InfersTheSameDrawFromTheTurns(Channel missing)
    {
        // With the turns at 55 °C and 35 °C coming back, 2 L/min leave at what a coil of 80 W/K makes of it.
        double carried = 2 * 4170 / 60.0;
        double effect = 80 / (80 + carried);
        RigReadings readings = Loop(2, 35 + (effect * 20), 35);
        MeteredDraw whole = DrawMeter.Of(Settings, readings, Running);
        MeteredDraw inferred = DrawMeter.Of(Settings, readings.Without(missing), Running);

        Assert.True(inferred.Inferred);
        Assert.Equal(whole.WaterWatts, inferred.WaterWatts, 0.02 * whole.WaterWatts);
        Assert.True(inferred.WaterErrorWatts > whole.WaterErrorWatts);
    }

    [Fact]
    public void Of_NoFlowMeter_InfersTheFlowFromThePumpsDuty()
    {
        MeteredDraw draw = DrawMeter.Of(Settings, Loop(0, 60, 10).Without(Channel.Flow), Running);

        Assert.True(draw.Inferred);
        Assert.Equal(0.5 * Settings.Loop.FullFlowLitresPerMinute, draw.FlowLitresPerMinute, 1e-9);
    }

    [Fact]
    public void Of_NothingOfThePairAndNoTurns_ClaimsNothing()
    {
        RigReadings readings = Loop(2, 60, 10).Without(Channel.Supply, Channel.Return, Channel.HeapTurns);
        MeteredDraw draw = DrawMeter.Of(Settings, readings, Running);

        Assert.Equal(0, draw.WaterWatts);
        Assert.True(draw.Inferred);
        Assert.True(draw.WaterErrorWatts > 1000);
    }

    [Theory]
    [InlineData(1e-84)]
    [InlineData(1e-3)]
    public void Of_HardlyAnyFlowAndNoReturnProbe_InfersHardlyAnything(double duty)
    {
        RigReadings readings = Loop(0, 20, 10).Without(Channel.Return, Channel.Flow);

        Assert.InRange(DrawMeter.Of(Settings, readings, new Outputs(duty, 1, 0, false)).WaterWatts, 0, duty * 4 * 4170 / 60 * 95);
    }

    [Fact]
    public void Of_NoCoilTold_InfersNothing() => Assert.Equal(
        0, DrawMeter.Of(Settings with { CoilWPerK = 0 }, Loop(2, 60, 10).Without(Channel.Supply), Running).WaterWatts, 1e-9);

    [Fact]
    public void Of_BlowerRuns_MetersTheAirByItsRise()
    {
        Outputs blowing = new(0, 0, 0.5, false);

        // Half of 0.04 m³/s × 1.2 kg/m³ × 1006 J/kgK × (30 - 4) K.
        Assert.Equal(0.02 * 1.2 * 1006 * 26, DrawMeter.Of(Settings, Sound.Readings, blowing).AirWatts, 1e-6);
    }

    [Fact]
    public void Of_NoDuctProbe_InfersTheAirFromTheCore()
    {
        MeteredDraw draw = DrawMeter.Of(Settings, Sound.Readings.Without(Channel.DuctAir), new Outputs(0, 0, 0.5, false));

        Assert.Equal(0.02 * 1.2 * 1006 * 28, draw.AirWatts, 1e-6);
        Assert.True(draw.Inferred);
    }

    private static RigReadings Loop(double flow, double supply, double back) =>
        Sound.Readings.With(Channel.Flow, flow).With(Channel.Supply, supply).With(Channel.Return, back);
}
