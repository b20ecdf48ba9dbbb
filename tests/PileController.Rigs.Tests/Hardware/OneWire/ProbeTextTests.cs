using PileController.Control.Readings;
using PileController.Rigs.Hardware.OneWire;

namespace PileController.Rigs.Tests.Hardware.OneWire;

public class ProbeTextTests
{
    [Theory]
    [InlineData(54.1875)]
    [InlineData(0)]
    [InlineData(-7.5)]
    public void Read_TwoLines_GivesTheTemperatureOfTheBytes(double celsius)
    {
        ProbeAnswer answer = ProbeText.Read(ProbeBytes.Text(celsius));

        Assert.True(answer.IsGood);
        Assert.Equal(celsius, answer.Celsius);
    }

    [Fact]
    public void Read_WrittenOut_ParsesTheKernelsForm()
    {
        // Bytes of SEN-017 (computed from the formula): the power-on scratchpad.
        const string text = "50 05 4b 46 7f ff 0c 10 1c : crc=1c YES\n50 05 4b 46 7f ff 0c 10 1c t=85000\n";

        Assert.Equal(new ProbeAnswer(ReadingQuality.Good, 0x0550), ProbeText.Read(text));
    }

    [Fact]
    public void Read_KernelSaysNo_IsABadChecksumThoughTheBytesFit() =>
        Assert.Equal(
            ReadingQuality.BadChecksum, ProbeText.Read(ProbeBytes.Text(ProbeBytes.Of(320), kernelAgrees: false)).Quality);

    [Fact]
    public void Read_KernelSaysYesToWrongBytes_IsABadChecksum()
    {
        byte[] bytes = ProbeBytes.Of(320);
        bytes[0]++;

        Assert.Equal(ReadingQuality.BadChecksum, ProbeText.Read(ProbeBytes.Text(bytes)).Quality);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Read_AllZero_IsAShortedBusWhateverTheKernelSays(bool kernelAgrees) =>
        Assert.Equal(ReadingQuality.Shorted, ProbeText.Read(ProbeBytes.Text(new byte[9], kernelAgrees)).Quality);

    [Theory]
    [InlineData("")]
    [InlineData("\n")]
    [InlineData("   \n\t")]
    public void Read_Nothing_IsNoAnswer(string text) =>
        Assert.Equal(ReadingQuality.NoAnswer, ProbeText.Read(text).Quality);

    [Theory]
    [InlineData("garbage")]
    [InlineData("zz 05 4b 46 7f ff 0c 10 1c : crc=1c YES")]
    [InlineData("50 05 4b 46 7f ff 0c 10 : crc=1c YES")]
    [InlineData("50 05 4b 46 7f ff 0c 10 1c 00 : crc=1c YES")]
    [InlineData("500 5 4b 46 7f ff 0c 10 1c : crc=1c YES")]
    [InlineData("50 05 4b 46 7f ff 0c 10 1c crc=1c YES")]
    [InlineData("50 05 4b 46 7f ff 0c 10 1c : crc=1c")]
    [InlineData("50 05 4b 46 7f ff 0c 10 1c : crc=1c MAYBEYES")]
    [InlineData(": YES")]
    [InlineData("\0\0\0\0")]
    public void Read_Garbage_IsABadChecksum(string text) =>
        Assert.Equal(ReadingQuality.BadChecksum, ProbeText.Read(text).Quality);
}
