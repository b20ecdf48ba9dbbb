using PileController.Rigs.Hardware;
using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Tests.Hardware.Ports;

public sealed class PwmOutputTests : IDisposable
{
    private const string Device = "platform/soc/clock.pwm";

    private readonly PwmTree _tree = new();

    public PwmOutputTests() => _tree.Add(0, Device, 2);

    public void Dispose() => _tree.Dispose();

    [Theory]
    [InlineData("clock.pwm")]
    [InlineData("soc/clock.pwm")]
    [InlineData("/platform/soc/clock.pwm")]
    public void Find_NameOrEndOfPath_FindsThatChipWhateverItsNumber(string device)
    {
        _tree.Add(7, "platform/other.pwm", 4);

        Assert.Equal(2, PwmChip.Find(device, _tree.Files).Channels);
    }

    [Theory]
    [InlineData("pwmchip0", "no PWM chip")]
    [InlineData("lock.pwm", "no PWM chip")]
    [InlineData("fan.pwm", "2 PWM chips")]
    public void Find_NotOneChip_IsNotGuessedAndNamesWhatIsThere(string device, string words)
    {
        _tree.Add(1, "a/fan.pwm", 1);
        _tree.Add(2, "b/fan.pwm", 1);

        RigFaultException error = Assert.Throws<RigFaultException>(() => PwmChip.Find(device, _tree.Files));
        Assert.Contains(words, error.Message, StringComparison.Ordinal);
        Assert.Contains("soc/clock.pwm\"", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_NoPwmAtAll_SaysNone() => Assert.Contains(
        "Devices found: none",
        Assert.Throws<RigFaultException>(() => PwmChip.Find("x", _tree.Files with { Root = "/nowhere" })).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(-1)]
    [InlineData(2)]
    public void Ctor_ChannelTheChipHasNot_IsRefused(int channel) =>
        Assert.Contains("0 to 1", Assert.Throws<RigFaultException>(() => Make(channel)).Message, StringComparison.Ordinal);

    [Fact]
    public void Ctor_LeftWithALongerPeriodAndTheOtherPolarity_IsSetRightWithoutAPulse()
    {
        string channel = _tree.Watched = _tree.ChannelOf(0, Device, 1);
        _tree.Leave(channel, 500_000, 400_000, 0, "inversed");
        using PwmOutput output = Make(1);

        Assert.Equal("normal", _tree.Polarity(channel));
        output.Write(0.5);
        Assert.Equal(0.5, _tree.Share(channel));
        Assert.Equal([0, 0.5], _tree.Seen);
    }

    [Fact]
    public void Ctor_RightsComeAMomentLater_WaitsForThem()
    {
        _tree.Refusals = 3;
        using PwmOutput output = Make(0);

        Assert.Equal(3, _tree.Pauses);
    }

    [Fact]
    public void Ctor_NoRightsAtAll_SaysSo()
    {
        _tree.Refusals = 1000;

        Assert.Contains("cannot be taken", Assert.Throws<RigFaultException>(() => Make(0)).Message, StringComparison.Ordinal);
        Assert.InRange(_tree.Pauses, 1, 100);
    }

    private PwmOutput Make(int channel) => new(PwmChip.Find(Device, _tree.Files), channel, 1000, _tree.Files);
}
