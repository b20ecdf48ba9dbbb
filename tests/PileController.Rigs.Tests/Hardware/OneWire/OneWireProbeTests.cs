using PileController.Control.Readings;
using PileController.Rigs.Hardware.OneWire;

namespace PileController.Rigs.Tests.Hardware.OneWire;

public class OneWireProbeTests
{
    private readonly Queue<string?> _texts = new();
    private readonly OneWireProbe _probe;

    public OneWireProbeTests() => _probe = new OneWireProbe("w1_slave", Next);

    [Fact]
    public void Read_EightyFiveThenAConversion_GivesTheConversion()
    {
        Queue(85, 21.5);

        Assert.Equal(new ProbeAnswer(ReadingQuality.Good, 344), _probe.Read());
    }

    [Fact]
    public void Read_EightyFiveTwice_IsAPowerOnValue()
    {
        Queue(85, 85);

        Assert.Equal(new ProbeAnswer(ReadingQuality.PowerOnValue, 0x0550), _probe.Read());
    }

    [Fact]
    public void Read_EightyFiveThenNothing_IsAPowerOnValue()
    {
        Queue(85);
        _texts.Enqueue(null);

        Assert.Equal(ReadingQuality.PowerOnValue, _probe.Read().Quality);
    }

    [Theory]
    [InlineData(82)]
    [InlineData(84.9375)]
    [InlineData(88)]
    public void Read_EightyFiveNearTheReadingBefore_IsBelievedAtOnce(double before)
    {
        Queue(before, 85);
        _probe.Read();

        Assert.Equal(new ProbeAnswer(ReadingQuality.Good, 0x0550), _probe.Read());
        Assert.Empty(_texts);
    }

    [Theory]
    [InlineData(81.9375)]
    [InlineData(88.0625)]
    [InlineData(20)]
    public void Read_EightyFiveFarFromTheReadingBefore_IsAskedAgain(double before)
    {
        Queue(before, 85, 85);
        _probe.Read();

        Assert.Equal(ReadingQuality.PowerOnValue, _probe.Read().Quality);
    }

    [Fact]
    public void Read_PowerOnValuesInARow_DoNotConfirmEachOther()
    {
        Queue(85, 85, 85, 85);
        _probe.Read();

        Assert.Equal(ReadingQuality.PowerOnValue, _probe.Read().Quality);
    }

    [Theory]
    [InlineData(84.9375)]
    [InlineData(85.0625)]
    public void Read_NextToEightyFive_IsNoPowerOnValue(double celsius)
    {
        Queue(celsius);

        Assert.True(_probe.Read().IsGood);
    }

    [Fact]
    public void Read_AnyExceptionOfTheFile_IsNoAnswer()
    {
        Exception[] errors = [new IOException("gone"), new UnauthorizedAccessException("no"), new NotSupportedException("odd")];
        foreach (Exception error in errors)
        {
            Assert.Equal(ReadingQuality.NoAnswer, new OneWireProbe("x", _ => throw error).Read().Quality);
        }
    }

    private void Queue(params double[] celsius)
    {
        foreach (double value in celsius)
        {
            _texts.Enqueue(ProbeBytes.Text(value));
        }
    }

    private string Next(string path) => _texts.Dequeue() ?? throw new IOException("no such device");
}
