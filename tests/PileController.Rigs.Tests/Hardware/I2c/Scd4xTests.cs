using Microsoft.Extensions.Time.Testing;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.I2c;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Tests.Hardware.I2c;

public sealed class Scd4xTests : IDisposable
{
    private readonly FakeTimeProvider _time = new();
    private readonly GasChip _chip;
    private readonly Scd4x _probe;
    private TimeSpan _waited;

    public Scd4xTests()
    {
        _chip = new GasChip(_time);
        _probe = new Scd4x(_time, Wait);
    }

    public void Dispose() => _chip.Dispose();

    [Fact]
    public void Ppm_Started_IsNoAnswerUntilTheFirstMeasurement()
    {
        Assert.Equal(Measured.Failed(ReadingQuality.NoAnswer), _probe.Ppm(_chip));
        _time.Advance(TimeSpan.FromSeconds(4));
        Assert.Equal(Measured.Failed(ReadingQuality.NoAnswer), _probe.Ppm(_chip));
        _time.Advance(TimeSpan.FromSeconds(1));

        Assert.Equal(Measured.Good(700), _probe.Ppm(_chip));
        Assert.Equal(1, _chip.Starts);
    }

    [Fact]
    public void Ppm_AskedMoreOftenThanItMeasures_IsTheOneBefore()
    {
        Begin();
        _chip.Ppm = 900;
        _time.Advance(TimeSpan.FromSeconds(2));
        Assert.Equal(Measured.Good(700), _probe.Ppm(_chip));
        _time.Advance(TimeSpan.FromSeconds(3));

        Assert.Equal(Measured.Good(900), _probe.Ppm(_chip));
    }

    [Fact]
    public void Ppm_SupplyWasGone_IsTheOneBeforeForFifteenSecondsThenStartedAgain()
    {
        Begin();
        _chip.LoseSupply();
        _time.Advance(TimeSpan.FromSeconds(10));
        Assert.Equal(Measured.Good(700), _probe.Ppm(_chip));
        _time.Advance(TimeSpan.FromSeconds(6));
        Assert.Equal(ReadingQuality.NoAnswer, _probe.Ppm(_chip).Quality);
        Assert.Equal(2, _chip.Starts);
        _time.Advance(TimeSpan.FromSeconds(5));

        Assert.Equal(Measured.Good(700), _probe.Ppm(_chip));
    }

    // A program that was started again finds the device measuring: it takes no start before a stop.
    [Fact]
    public void Ppm_FoundMeasuring_IsStoppedAndStartedWithinTheTimeADeviceHas()
    {
        Begin();
        Scd4x another = new(_time, Wait);
        _waited = TimeSpan.Zero;
        another.Ppm(_chip);

        Assert.Equal(2, _chip.Starts);
        Assert.Equal([0x3F, 0x86], _chip.Written[^2]);
        Assert.Equal([0x21, 0xB1], _chip.Written[^1]);

        // It takes no command for 500 ms after a stop (from memory).
        Assert.InRange(_waited, TimeSpan.FromMilliseconds(500), BusLimits.I2c.Device);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(8)]
    public void Ppm_OneBitWrong_IsBadChecksum(int place)
    {
        Begin();
        _time.Advance(TimeSpan.FromSeconds(5));
        _chip.Disturbed = place;

        Assert.Equal(ReadingQuality.BadChecksum, _probe.Ppm(_chip).Quality);
    }

    [Theory]
    [InlineData(0, ReadingQuality.OutOfRange)]
    [InlineData(400, ReadingQuality.Good)]
    [InlineData(40_000, ReadingQuality.Good)]
    [InlineData(40_001, ReadingQuality.OutOfRange)]
    public void Ppm_OfAWord_IsWithinWhatThePartCanTell(int word, ReadingQuality quality)
    {
        _chip.Ppm = (ushort)word;
        _probe.Ppm(_chip);
        _time.Advance(TimeSpan.FromSeconds(5));

        Assert.Equal(quality, _probe.Ppm(_chip).Quality);
    }

    [Fact]
    public void Ppm_NotThere_Throws()
    {
        _chip.FailNext = int.MaxValue;

        Assert.Throws<IOException>(() => _probe.Ppm(_chip));
    }

    [Fact]
    public void Ppm_NobodyPullsTheLineLow_Throws()
    {
        Begin();
        _chip.IsGone = true;

        Assert.Throws<IOException>(() => _probe.Ppm(_chip));
    }

    private void Wait(TimeSpan pause) => _waited += pause;

    private void Begin()
    {
        _probe.Ppm(_chip);
        _time.Advance(TimeSpan.FromSeconds(5));
        Assert.Equal(Measured.Good(700), _probe.Ppm(_chip));
    }
}
