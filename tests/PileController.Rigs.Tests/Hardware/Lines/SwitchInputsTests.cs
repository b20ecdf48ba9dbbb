using System.Device.Gpio;
using PileController.Control.Readings;
using PileController.Rigs.Hardware;
using PileController.Rigs.Hardware.Lines;

namespace PileController.Rigs.Tests.Hardware.Lines;

public sealed class SwitchInputsTests : IDisposable
{
    private const int Line = 6;

    private readonly FakeLines _lines = new();
    private readonly GpioController _controller;

    public SwitchInputsTests() => _controller = new GpioController(_lines);

    public void Dispose() => _controller.Dispose();

    // A leak switch says 1 when wet, a level switch 1 when there is water.
    [Theory]
    [InlineData(Channel.Leak, LineLevel.Low, false, 0)]
    [InlineData(Channel.Leak, LineLevel.Low, true, 1)]
    [InlineData(Channel.Leak, LineLevel.High, true, 0)]
    [InlineData(Channel.Leak, LineLevel.High, false, 1)]
    [InlineData(Channel.Level, LineLevel.Low, false, 1)]
    [InlineData(Channel.Level, LineLevel.Low, true, 0)]
    [InlineData(Channel.Level, LineLevel.High, true, 1)]
    [InlineData(Channel.Level, LineLevel.High, false, 0)]
    public async Task ReadAsync_AnyPolarity_TellsWellFromIll(Channel channel, LineLevel wellWhen, bool high, int says)
    {
        using SwitchInputs inputs = Make(channel, wellWhen);
        _lines.Set(Line, high);

        Assert.Equal(new Reading(says, ReadingQuality.Good, 0), await ReadAsync(inputs, channel));
    }

    [Theory]
    [InlineData(Channel.Leak, 1)]
    [InlineData(Channel.Level, 0)]
    public async Task ReadAsync_BrokenWireOfAClosedContactUnderAPullUp_IsTheDangerousState(Channel channel, int says)
    {
        // Closed to ground while all is well; with the wire broken the resistor pulls the line up.
        using SwitchInputs inputs = Make(channel, LineLevel.Low);
        _lines.Set(Line, true);

        Assert.Equal(says, (await ReadAsync(inputs, channel)).Quanta);
    }

    [Fact]
    public async Task ReadAsync_LineCannotBeRead_IsNoAnswer()
    {
        using SwitchInputs inputs = Make(Channel.Leak, LineLevel.Low);
        _lines.Broken.Add(Line);

        Assert.Equal(ReadingQuality.NoAnswer, (await ReadAsync(inputs, Channel.Leak)).Quality);
    }

    [Fact]
    public void Ctor_LineThatCannotBeOpened_IsAFaultThatNamesIt()
    {
        _lines.Broken.Add(Line);

        RigFaultException error = Assert.Throws<RigFaultException>(() => Make(Channel.Leak, LineLevel.Low));
        Assert.Contains("line 6 of leak", error.Message, StringComparison.Ordinal);
    }

    private static async Task<Reading> ReadAsync(SwitchInputs inputs, Channel channel)
    {
        Reading[] readings = new Reading[ChannelTable.Count];
        await inputs.ReadAsync(readings, CancellationToken.None);
        return readings[(int)channel];
    }

    private SwitchInputs Make(Channel channel, LineLevel wellWhen) =>
        new(_controller, [new(channel) { Wiring = new() { Source = ProbeSource.Switch, Line = Line, WellWhen = wellWhen } }]);
}
