using System.Device.I2c;
using Microsoft.Extensions.Time.Testing;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.I2c;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Tests.Hardware.I2c;

public sealed class I2cStationTests : IDisposable
{
    private readonly MonitorChip _chip = new();
    private readonly FakeTimeProvider _time = new();
    private readonly List<string> _reports = [];
    private Func<I2cDevice> _open;
    private Action<I2cDevice>? _glance;
    private Func<I2cDevice, Measured> _ask = device => Measured.Good(Registers.Read(device, 2));

    public I2cStationTests() => _open = () => _chip;

    public void Dispose() => _chip.Dispose();

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Ask_FailsOnceOrTwice_AnswersAllTheSameAndCounts(int failures)
    {
        using I2cStation station = Make();
        _chip.FailNext = failures;

        Assert.Equal(ReadingQuality.Good, Assert.Single(station.Ask()).Quality);
        Assert.Equal(failures, station.Failures);
        Assert.Empty(_reports);
    }

    [Fact]
    public void Ask_FailsOn_GivesUpAfterThreeAndTellsItOnce()
    {
        using I2cStation station = Make();
        _chip.FailNext = 6;

        Assert.Equal(ReadingQuality.NoAnswer, Assert.Single(station.Ask()).Quality);
        Assert.Equal(3, _chip.Transfers);
        station.Ask();
        Assert.Equal(["The monitor 0x40 does not answer: Error 121 performing I2C data transfer."], _reports);
        station.Ask();
        Assert.Equal("The monitor 0x40 answers again; 6 of its transfers have failed since the start.", _reports[^1]);
    }

    [Fact]
    public void Ask_FailsSlowly_IsNotTriedAgain()
    {
        // A held clock line costs the kernel's whole wait: three of them would hold up the others for nothing.
        using I2cStation station = Make();
        _chip.FailNext = 1;
        _chip.OnTransfer = () => _time.Advance(TimeSpan.FromSeconds(1));

        Assert.Equal(ReadingQuality.NoAnswer, Assert.Single(station.Ask()).Quality);
        Assert.Equal(1, _chip.Transfers);
    }

    [Fact]
    public void Ask_ChecksumWrong_IsTriedAgainAndSaidAsSuch()
    {
        int asked = 0;
        _ask = _ => ++asked == 1 ? Measured.Failed(ReadingQuality.BadChecksum) : Measured.Good(1);
        using I2cStation station = Make();
        Assert.Equal(ReadingQuality.Good, Assert.Single(station.Ask()).Quality);
        _ask = _ => Measured.Failed(ReadingQuality.BadChecksum);

        Assert.Equal(ReadingQuality.BadChecksum, Assert.Single(station.Ask()).Quality);
        Assert.Equal(4, station.Failures);
    }

    [Fact]
    public void Ask_BusNotThere_IsNoAnswerUntilItComes()
    {
        _open = () => throw new IOException("Can not open I2C device file '/dev/i2c-7'.");
        using I2cStation station = Make();
        Assert.Equal(ReadingQuality.NoAnswer, Assert.Single(station.Ask()).Quality);
        _open = () => _chip;

        Assert.Equal(ReadingQuality.Good, Assert.Single(station.Ask()).Quality);
        Assert.Contains("/dev/i2c-7", _reports[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Glance_Fails_IsCountedAndNoMore()
    {
        _glance = device => Registers.Read(device, 2);
        using I2cStation station = Make();
        station.Ask();
        _chip.FailNext = 1;
        station.Glance();

        Assert.Equal(1, station.Failures);
        Assert.Empty(_reports);
        Assert.Equal(ReadingQuality.Good, Assert.Single(station.Ask()).Quality);
    }

    [Fact]
    public void Glance_SilentDevice_IsLeftToTheSweep()
    {
        _glance = device => Registers.Read(device, 2);
        using I2cStation station = Make();
        _chip.FailNext = 3;
        station.Ask();
        int before = _chip.Transfers;
        station.Glance();

        Assert.Equal(before, _chip.Transfers);
    }

    private I2cStation Make() =>
        new("the monitor 0x40", () => _open(), device => [_ask(device)], _glance, 1, _time, _reports.Add);
}
