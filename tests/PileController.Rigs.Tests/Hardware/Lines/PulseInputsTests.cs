using System.Device.Gpio;
using Microsoft.Extensions.Time.Testing;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Lines;

namespace PileController.Rigs.Tests.Hardware.Lines;

public sealed class PulseInputsTests : IDisposable
{
    private const int Line = 5;

    private readonly FakeLines _lines = new();
    private readonly FakeTimeProvider _time = new();
    private readonly GpioController _controller;
    private readonly FakeWheel _wheel;

    public PulseInputsTests()
    {
        _controller = new GpioController(_lines);
        _wheel = new FakeWheel(_lines, Line, _time);
        _lines.Set(Line, true);
    }

    public void Dispose() => _controller.Dispose();

    [Fact]
    public async Task ReadAsync_PulsesComing_IsLitresAMinute()
    {
        using PulseInputs inputs = Make();
        _wheel.Turn(10, 30);
        await ReadAsync(inputs);
        _wheel.Turn(10, 30);

        // 30 a second are 4 L/min at 450 a litre.
        Reading reading = await ReadAsync(inputs);
        Assert.Equal(4, reading.ValueOf(Channel.Flow), 0.05);
        Assert.Equal((ReadingQuality.Good, 0), (reading.Quality, reading.AgeMilliseconds));
    }

    [Theory]
    [InlineData(14, ReadingQuality.Good)]
    [InlineData(16, ReadingQuality.Late)]
    public async Task ReadAsync_NoGateClosesAnyMore_IsLate(int seconds, ReadingQuality quality)
    {
        using PulseInputs inputs = Make();
        _wheel.Turn(1.2, 30);
        await ReadAsync(inputs);

        // The timer's thread stands still: time passes without its being called.
        inputs.Dispose();
        _time.Advance(TimeSpan.FromSeconds(seconds));
        Reading reading = await ReadAsync(inputs);

        Assert.Equal(quality, reading.Quality);
        Assert.InRange(reading.AgeMilliseconds, (seconds - 1) * 1000, (seconds + 1) * 1000);
    }

    [Fact]
    public async Task ReadAsync_LineBounces_IsOutOfRange()
    {
        using PulseInputs inputs = Make();
        _wheel.Turn(10, 400);

        Assert.Equal(ReadingQuality.OutOfRange, (await ReadAsync(inputs)).Quality);
    }

    private static async Task<Reading> ReadAsync(PulseInputs inputs)
    {
        Reading[] readings = new Reading[ChannelTable.Count];
        await inputs.ReadAsync(readings, CancellationToken.None);
        return readings[(int)Channel.Flow];
    }

    private PulseInputs Make() => new(
        _controller,
        new RigSettings { Probes = [new(Channel.Flow) { Wiring = new() { Source = ProbeSource.Pulses, Line = Line } }], PulsesPerLitre = 450 },
        _time,
        _ => { });
}
