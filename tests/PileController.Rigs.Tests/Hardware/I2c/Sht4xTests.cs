using PileController.Control.Readings;
using PileController.Rigs.Hardware.I2c;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Tests.Hardware.I2c;

public sealed class Sht4xTests : IDisposable
{
    private readonly AirChip _chip = new();

    public void Dispose() => _chip.Dispose();

    // SHT3x-DIS data sheet, May 2018, table 20: the checksum of 0xBEEF is 0x92.
    [Fact]
    public void Checksum_OfThePublishedExample_IsThePublishedOne() => Assert.Equal(0x92, WordChecksum.Of([0xBE, 0xEF]));

    // Both ends of the published line, -45 + 175·S/65535, lie beyond the part's range; 0x6666 is two fifths of it.
    [Theory]
    [InlineData(0x6666, 25.0, ReadingQuality.Good)]
    [InlineData(0x0751, -40.0, ReadingQuality.Good)]
    [InlineData(0x0000, -40.0, ReadingQuality.OutOfRange)]
    [InlineData(0xFFFE, 125.0, ReadingQuality.OutOfRange)]
    public void Celsius_OfAWord_FollowsThePublishedLine(int word, double celsius, ReadingQuality quality)
    {
        _chip.Bytes = AirChip.Words((ushort)word, 0x8000);
        Measured air = new Sht4x(_chip, _ => { }).Measure().Celsius;

        Assert.Equal(quality, air.Quality);
        Assert.Equal(celsius, air.Value, 0.005);
    }

    // The published line, -6 + 125·S/65535, cut to 0 to 100 %; 0x8000 is half of it.
    [Theory]
    [InlineData(0x8000, 56.5)]
    [InlineData(0x0000, 0)]
    [InlineData(0xFFFE, 100)]
    public void Percent_OfAWord_FollowsThePublishedLineAndIsCut(int word, double percent)
    {
        _chip.Bytes = AirChip.Words(0x6666, (ushort)word);
        Measured air = new Sht4x(_chip, _ => { }).Measure().Percent;

        Assert.Equal(ReadingQuality.Good, air.Quality);
        Assert.Equal(percent, air.Value, 0.005);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(5)]
    public void Celsius_OneBitWrong_IsBadChecksum(int place)
    {
        _chip.Bytes[place] ^= 0x10;

        (Measured celsius, Measured percent) = new Sht4x(_chip, _ => { }).Measure();

        Assert.Equal((ReadingQuality.BadChecksum, ReadingQuality.BadChecksum), (celsius.Quality, percent.Quality));
    }

    [Fact]
    public void Celsius_NobodyPullsTheLineLow_IsNoAnswer()
    {
        _chip.Bytes = [0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF];

        Assert.Equal(ReadingQuality.NoAnswer, new Sht4x(_chip, _ => { }).Measure().Celsius.Quality);
    }

    [Fact]
    public void Celsius_Asked_WaitsForTheMeasurement()
    {
        TimeSpan waited = TimeSpan.Zero;
        new Sht4x(_chip, pause => waited += pause).Measure();

        // At most 8.3 ms at high precision (data sheet, from memory).
        Assert.True(waited >= TimeSpan.FromMilliseconds(8.3));
    }
}
