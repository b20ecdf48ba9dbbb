using PileController.Control.Readings;
using PileController.Rigs.Hardware.OneWire;

namespace PileController.Rigs.Tests.Hardware.OneWire;

public class ScratchpadTests
{
    // SEN-003, 006...010: DS18B20 data sheet table as asserted in three independent public test suites;
    // SEN-001, 002, 004, 005: from memory.
    [Theory]
    [InlineData(0x07D0, 125.0)] // SEN-001
    [InlineData(0x0550, 85.0)] // SEN-002
    [InlineData(0x0191, 25.0625)] // SEN-003
    [InlineData(0x00A2, 10.125)] // SEN-004
    [InlineData(0x0008, 0.5)] // SEN-005
    [InlineData(0x0000, 0.0)] // SEN-006
    [InlineData(0xFFF8, -0.5)] // SEN-007
    [InlineData(0xFF5E, -10.125)] // SEN-008
    [InlineData(0xFE6F, -25.0625)] // SEN-009
    [InlineData(0xFC90, -55.0)] // SEN-010
    public void Judge_ReferenceWord_GivesTheReferenceTemperature(int word, double celsius)
    {
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
