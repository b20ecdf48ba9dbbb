using PileController.Rigs.Hardware;
using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Tests.Hardware.Ports;

public sealed class Pca9685Tests : IDisposable
{
    private readonly Pca9685Device _device = new();

    public void Dispose() => _device.Dispose();

    // 200 Hz gives 30 (0x1E), the example of the data sheet and its power-on value; the bounds 3 and 255 (from memory).
    [Theory]
    [InlineData(200, 30)]
    [InlineData(24, 253)]
    [InlineData(1526, 3)]
    public void Prescale_Frequency_IsTheDataSheets(double hertz, byte prescale) => Assert.Equal(prescale, Pca9685.Prescale(hertz));

    [Theory]
    [InlineData(23.9)]
    [InlineData(1527)]
    [InlineData(double.NaN)]
    public void Prescale_BeyondItsReach_IsRefusedByName(double hertz) =>
        Assert.Contains("FrequencyHz", Assert.Throws<ArgumentException>(() => Pca9685.Prescale(hertz)).Message, StringComparison.Ordinal);

    [Fact]
    public void Ctor_FreshChip_IsAwakeCountsOnAndHasItsFrequency()
    {
        using Pca9685 chip = Make(500);

        Assert.Equal((0x20, 0x04), (_device[0x00], _device[0x01]));
        Assert.InRange(_device.Hertz, 490, 510);
    }

    [Fact]
    public void Ctor_ChannelsLeftOn_AreOffBeforeAnythingElse()
    {
        Make(200).Write(5, 1);
        _device.Seen.Clear();
        Make(1000);

        Assert.Equal([0], _device.Seen);
    }

    [Fact]
    public void Write_NothingAndAll_UsesTheFullBits()
    {
        using Pca9685 chip = Make(500);
        chip.Write(5, 0);
        Assert.Equal(0x10, _device[0x06 + 20 + 3]);
        chip.Write(5, 1);
        Assert.Equal((0x10, 0), (_device[0x06 + 20 + 1], _device[0x06 + 20 + 3]));
    }

    [Fact]
    public void Write_OneChannel_LeavesTheOthers()
    {
        using Pca9685 chip = Make(500);
        chip.Write(4, 0.25);
        chip.Write(5, 0.5);

        Assert.Equal((0.25, 0.5, 0), (_device.Share(4), _device.Share(5), _device.Share(6)));
    }

    [Fact]
    public void Write_AfterABreakOfItsSupply_TellsAndWorksAgain()
    {
        using Pca9685 chip = Make(500);
        chip.Write(5, 0.5);
        _device.PowerOn();

        Assert.Contains("supply", Assert.ThrowsAny<Exception>(() => chip.Write(5, 0.5)).Message, StringComparison.Ordinal);
        Assert.Equal(0, _device.Share(5));
        chip.Write(5, 0.5);
        Assert.Equal(0.5, _device.Share(5));
    }

    [Fact]
    public void Ctor_NothingThere_IsAFaultThatNamesBusAndAddress()
    {
        _device.IsGone = true;

        RigFaultException error = Assert.Throws<RigFaultException>(() => Make(500));
        Assert.Contains("0x40 of I2C bus 1", error.Message, StringComparison.Ordinal);
        Assert.Contains("Error 121", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Ctor_ChannelItHasNot_IsRefused()
    {
        using Pca9685 chip = Make(500);

        Assert.Contains("0 to 15", Assert.Throws<RigFaultException>(() => new Pca9685Output(chip, 16)).Message, StringComparison.Ordinal);
    }

    private Pca9685 Make(double hertz) => new(_device, hertz, () => { });
}
