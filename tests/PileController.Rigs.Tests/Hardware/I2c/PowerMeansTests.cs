using PileController.Control.Readings;
using PileController.Rigs.Hardware.I2c;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Tests.Hardware.I2c;

public sealed class PowerMeansTests : IDisposable
{
    private static readonly ProbeFit[] Pump = [new(Channel.PumpPower) { Wiring = new() { ShuntOhms = 0.1 } }, new(Channel.Battery)];

    private readonly MonitorChip _chip = new();
    private readonly PowerMeans _means = new(Pump, _ => { });

    public void Dispose() => _chip.Dispose();

    [Theory]
    [InlineData(-0.001, ReadingQuality.Good)]
    [InlineData(0, ReadingQuality.Good)]
    [InlineData(3.1, ReadingQuality.Good)]
    [InlineData(3.2, ReadingQuality.OutOfRange)]
    [InlineData(-1, ReadingQuality.OutOfRange)]
    public void Ask_ShuntAtItsEndsOrTurnedRound_IsNoNumberToActOn(double amperes, ReadingQuality quality)
    {
        _chip.Carry(12, amperes, 0.1);
        IReadOnlyList<Measured> means = _means.Ask(_chip);

        Assert.Equal(quality, means[0].Quality);
        Assert.True(means[0].Value >= 0);
        Assert.Equal(Measured.Good(12), means[1]);
    }

    [Fact]
    public void Ask_LoadThatIsOffAtEachTick_IsTheMeanOfTheSecondsBetween()
    {
        // 22 W for six seconds in twenty, looked at by ticks of ten seconds that fall into the off-time.
        double[] ticks = new double[6];
        for (int second = 0; second < 60; second++)
        {
            _chip.Carry(11, second % 20 is >= 2 and < 8 ? 2 : 0, 0.1);
            if (second % 10 == 9)
            {
                ticks[second / 10] = _means.Ask(_chip)[0].Value;
            }
            else
            {
                _means.Look(_chip);
            }
        }

        Assert.Equal(22 * 0.3, ticks.Average(), 1e-9);
        Assert.Equal(13.2, ticks[0], 1e-9);
        Assert.Equal(0, ticks[1], 1e-9);
    }

    [Fact]
    public void Ask_OneLookBeyondTheRange_SpoilsThisTickAndNotTheNext()
    {
        _chip.Carry(12, 3.2, 0.1);
        _means.Look(_chip);
        _chip.Carry(12, 1, 0.1);

        Assert.Equal(ReadingQuality.OutOfRange, _means.Ask(_chip)[0].Quality);
        Measured next = _means.Ask(_chip)[0];
        Assert.Equal(ReadingQuality.Good, next.Quality);
        Assert.Equal(12, next.Value, 1e-9);
    }

    [Fact]
    public void Ask_DeviceFails_KeepsTheLooksBefore()
    {
        _chip.Carry(10, 2, 0.1);
        _means.Look(_chip);
        _chip.FailNext = 1;
        Assert.Throws<IOException>(() => _means.Ask(_chip));
        _chip.Carry(10, 0, 0.1);

        Assert.Equal(10, _means.Ask(_chip)[0].Value, 1e-9);
    }
}
