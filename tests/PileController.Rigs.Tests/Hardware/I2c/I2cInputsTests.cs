using Microsoft.Extensions.Time.Testing;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.I2c;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Tests.Hardware.I2c;

public sealed class I2cInputsTests : IDisposable
{
    private readonly FakeTimeProvider _time = new();
    private readonly ConverterChip _converter = new() { Volts = { [3] = 3.3 } };
    private readonly AirChip _air = new();
    private readonly MonitorChip _monitor = new();
    private readonly GasChip _gas;
    private readonly ManualResetEventSlim _hold = new(true);
    private readonly SemaphoreSlim _asked = new(0);

    public I2cInputsTests() => _gas = new GasChip(_time);

    public void Dispose()
    {
        _hold.Set();
        _gas.Dispose();
        _converter.Dispose();
        _air.Dispose();
        _monitor.Dispose();
        _asked.Dispose();
    }

    [Fact]
    public async Task ReadAsync_ThreeKindsOnOneBus_GiveEachChannelItsOwn()
    {
        _converter.Volts[0] = 3.3 * 1194.0 / (1194.0 + 2200);
        _converter.Volts[1] = 3.3 / 2;
        _air.Bytes = AirChip.Of(11.5);
        _monitor.Carry(12.8, 1.5, 0.1);
        using I2cInputs inputs = Make(
            Divider(Channel.Supply, 0), Thermistor(Channel.Floor, 1), Air(Channel.House) with { OffsetKelvin = -0.5 },
            Power(Channel.PumpPower), new ProbeFit(Channel.Battery) { Wiring = new() { Source = ProbeSource.Ina219, Bus = 1, Device = 0x40 } });
        RigReadings readings = await Read(inputs);

        Assert.Equal(50, readings[Channel.Supply].ValueOf(Channel.Supply), 0.1);
        Assert.Equal(25, readings[Channel.Floor].ValueOf(Channel.Floor), 0.1);
        Assert.Equal(Reading.FromValue(Channel.House, 11), readings[Channel.House]);
        Assert.Equal(19.2, readings[Channel.PumpPower].ValueOf(Channel.PumpPower), 0.0626);
        Assert.Equal(12.8, readings[Channel.Battery].ValueOf(Channel.Battery), 0.0041);
        Assert.All(new[] { Channel.Supply, Channel.Floor, Channel.House, Channel.PumpPower, Channel.Battery }, c => Assert.True(readings[c].IsGood));
        Assert.Equal(Reading.NotFitted, readings[Channel.BlowerPower]);
    }

    [Fact]
    public async Task ReadAsync_OneAirProbeAndACarbonDioxideProbe_GiveThreeChannelsOfTheHouse()
    {
        _air.Bytes = AirChip.Of(11.5, 81.25);
        using I2cInputs inputs = Make(Air(Channel.House), Air(Channel.Humidity), Gas());
        RigReadings first = await Read(inputs);
        Assert.Equal(ReadingQuality.NoAnswer, first[Channel.CarbonDioxide].Quality);
        _time.Advance(TimeSpan.FromSeconds(10));
        RigReadings readings = await Read(inputs);

        Assert.Equal(Reading.FromValue(Channel.House, 11.5), readings[Channel.House]);
        Assert.Equal(Reading.FromValue(Channel.Humidity, 81.25), readings[Channel.Humidity]);
        Assert.Equal(Reading.FromValue(Channel.CarbonDioxide, 700), readings[Channel.CarbonDioxide]);
    }

    [Fact]
    public async Task ReadAsync_CarbonDioxideProbeWithoutItsSupplyForAWhile_AnswersAgain()
    {
        using I2cInputs inputs = Make(Gas());
        await Read(inputs);
        _time.Advance(TimeSpan.FromSeconds(10));
        Assert.True((await Read(inputs))[Channel.CarbonDioxide].IsGood);
        _gas.LoseSupply();
        _gas.FailNext = 3;
        _time.Advance(TimeSpan.FromSeconds(10));
        Assert.Equal(ReadingQuality.NoAnswer, (await Read(inputs))[Channel.CarbonDioxide].Quality);
        for (int tick = 0; tick < 3; tick++)
        {
            _time.Advance(TimeSpan.FromSeconds(10));
            await Read(inputs);
        }

        Assert.Equal(Reading.FromValue(Channel.CarbonDioxide, 700), (await Read(inputs))[Channel.CarbonDioxide]);
    }

    [Fact]
    public async Task ReadAsync_DeviceThatHangs_HoldsNoTickAndSitsOutSoThatTheOthersStayFresh()
    {
        _monitor.Carry(12.8, 1.5, 0.1);
        using I2cInputs inputs = Make(Air(Channel.House), Power(Channel.PumpPower));
        await Read(inputs);
        _air.OnTransfer = () =>
        {
            _asked.Release();
            _hold.Wait();
        };
        _hold.Reset();
        _time.Advance(TimeSpan.FromSeconds(1));
        Task<RigReadings> read = Read(inputs);
        Assert.True(await _asked.WaitAsync(TimeSpan.FromSeconds(30)));
        _time.Advance(TimeSpan.FromSeconds(2));
        Assert.Equal(3_000, (await read)[Channel.House].AgeMilliseconds);

        // It comes back late, and would hang again if it were asked.
        _hold.Set();
        await Read(inputs);
        _hold.Reset();
        for (int tick = 0; tick < 3; tick++)
        {
            _time.Advance(TimeSpan.FromSeconds(10));
            RigReadings readings = await Read(inputs);
            Assert.Equal(Reading.FromValue(Channel.PumpPower, 19.2), readings[Channel.PumpPower]);
            Assert.Equal(tick == 0 ? ReadingQuality.Good : ReadingQuality.Late, readings[Channel.House].Quality);
        }
    }

    [Fact]
    public async Task ReadAsync_DeviceGone_CostsItsOwnReadingsOnly()
    {
        _air.FailNext = int.MaxValue;
        _monitor.Carry(12.8, 0, 0.1);
        using I2cInputs inputs = Make(Air(Channel.House), Power(Channel.PumpPower));
        RigReadings readings = await Read(inputs);

        Assert.Equal(ReadingQuality.NoAnswer, readings[Channel.House].Quality);
        Assert.Equal(new Reading(0, ReadingQuality.Good, 0), readings[Channel.PumpPower]);
    }

    [Fact]
    public async Task ReadAsync_ExcitationTold_IsUsedAsItIs()
    {
        _converter.Volts[0] = 3.0 * 1000 / (1000 + 2200);
        ProbeFit told = Divider(Channel.Supply, 0);
        using I2cInputs inputs = Make(told with { Wiring = told.Wiring with { ExcitationInput = null, ExcitationVolts = 3.0 } });

        Assert.Equal(0, (await Read(inputs))[Channel.Supply].ValueOf(Channel.Supply), 0.1);
    }

    private static ProbeFit Divider(Channel channel, int input) => new(channel)
    {
        Wiring = new()
        {
            Source = ProbeSource.Ads1115,
            Bus = 1,
            Device = 0x48,
            Input = input,
            Sensor = ResistorKind.Pt1000,
            ReferenceOhms = 2200,
            ExcitationInput = 3,
        },
    };

    private static ProbeFit Thermistor(Channel channel, int input) => new(channel)
    {
        Wiring = Divider(channel, input).Wiring with { Sensor = ResistorKind.Ntc, ReferenceOhms = 10_000, OhmsAt25C = 10_000, BetaKelvin = 3950 },
    };

    private static ProbeFit Air(Channel channel) =>
        new(channel) { Wiring = new() { Source = ProbeSource.Sht4x, Bus = 1, Device = 0x44 } };

    private static ProbeFit Gas() =>
        new(Channel.CarbonDioxide) { Wiring = new() { Source = ProbeSource.Scd4x, Bus = 1, Device = 0x62 } };

    private static ProbeFit Power(Channel channel) =>
        new(channel) { Wiring = new() { Source = ProbeSource.Ina219, Bus = 1, Device = 0x40, ShuntOhms = 0.1 } };

    private static async Task<RigReadings> Read(I2cInputs inputs)
    {
        Reading[] readings = new Reading[ChannelTable.Count];

        // The test's own clock stands still: a bus that hangs for good must fail the test, not hold it.
        await inputs.ReadAsync(readings, CancellationToken.None).WaitAsync(TimeSpan.FromSeconds(30));
        return new RigReadings(readings);
    }

    private I2cInputs Make(params IReadOnlyList<ProbeFit> probes) => new(
        probes, _time, BusLimits.I2c, place => place.DeviceAddress switch { 0x48 => _converter, 0x44 => _air, 0x62 => _gas, _ => _monitor }, _ => { }, _ => { });
}
