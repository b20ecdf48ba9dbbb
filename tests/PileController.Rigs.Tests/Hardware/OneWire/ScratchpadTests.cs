using PileController.Control.Readings;
using PileController.Rigs.Hardware.OneWire;

namespace PileController.Rigs.Tests.Hardware.OneWire;

public class ScratchpadTests
{
    // SEN-003, 006...010: DS18B20 data sheet table as asserted in three independent public test suites;
    // SEN-001, 002, 004, 005: from memory.
    [Theory]
    [InlineData("SEN-001", 0x07D0, 125.0)]
    [InlineData("SEN-002", 0x0550, 85.0)]
    [InlineData("SEN-003", 0x0191, 25.0625)]
    [InlineData("SEN-004", 0x00A2, 10.125)]
    [InlineData("SEN-005", 0x0008, 0.5)]
    [InlineData("SEN-006", 0x0000, 0.0)]
    [InlineData("SEN-007", 0xFFF8, -0.5)]
    [InlineData("SEN-008", 0xFF5E, -10.125)]
    [InlineData("SEN-009", 0xFE6F, -25.0625)]
    [InlineData("SEN-010", 0xFC90, -55.0)]
    public void Judge_ReferenceWord_GivesTheReferenceTemperature(string row, int word, double celsius)
    {
        Assert.NotEmpty(row);
        ProbeAnswer answer = Scratchpad.Judge(ProbeBytes.Of(word));

        Assert.True(answer.IsGood);
        Assert.Equal(celsius, answer.Celsius);
    }

    [Fact]
    public void Judge_AllZero_IsAShortedBusThoughTheChecksumFits()
    {
        byte[] zeros = new byte[Scratchpad.Length];

        // SEN-018: the checksum of eight zero bytes is zero.
        Assert.Equal(0, Crc8.Of(zeros));
        Assert.Equal(ReadingQuality.Shorted, Scratchpad.Judge(zeros).Quality);
    }

    [Fact]
    public void Judge_AllOnes_IsNoAnswer() =>
        Assert.Equal(ReadingQuality.NoAnswer, Scratchpad.Judge(Enumerable.Repeat((byte)0xFF, 9).ToArray()).Quality);

    [Fact]
    public void Judge_AnyBitTurned_IsABadChecksum()
    {
        for (int bit = 0; bit < 72; bit++)
        {
            byte[] bytes = ProbeBytes.Of(0x0191);
            bytes[bit / 8] ^= (byte)(1 << (bit % 8));
            Assert.Equal(ReadingQuality.BadChecksum, Scratchpad.Judge(bytes).Quality);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(8)]
    [InlineData(10)]
    public void Judge_WrongLength_IsABadChecksum(int length) =>
        Assert.Equal(ReadingQuality.BadChecksum, Scratchpad.Judge(new byte[length]).Quality);

    // Undefined low bits at 9 to 11 bit (from memory): 25.0625 + bits below the resolution.
    [Theory]
    [InlineData(0x1F, 0x0197, 25.0)]
    [InlineData(0x3F, 0x0197, 25.25)]
    [InlineData(0x5F, 0x0197, 25.375)]
    [InlineData(0x7F, 0x0197, 25.4375)]
    [InlineData(0x1F, 0xFF5E, -10.5)]
    public void Judge_LowerResolution_LeavesTheUndefinedBitsOut(byte configuration, int word, double celsius) =>
        Assert.Equal(celsius, Scratchpad.Judge(ProbeBytes.Of(word, configuration)).Celsius);
}
