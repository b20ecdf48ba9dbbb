using PileController.Rigs.Hardware.OneWire;

namespace PileController.Rigs.Tests.Hardware.OneWire;

public class Crc8Tests
{
    // SEN-011...013: application note 27 example as asserted in ten public test suites; SEN-014: ROM example in a
    // public firmware test; SEN-015, 016: prefixes in a public test; SEN-017...019: computed from the formula.
    [Theory]
    [InlineData("SEN-011", "021CB801000000", 0xA2)]
    [InlineData("SEN-012", "021CB801000000A2", 0x00)]
    [InlineData("SEN-013", "313233343536373839", 0xA1)]
    [InlineData("SEN-014", "28AA1E2C1D1302", 0x6E)]
    [InlineData("SEN-015", "02", 0xBC)]
    [InlineData("SEN-016", "021C", 0xAF)]
    [InlineData("SEN-017", "50054B467FFF0C10", 0x1C)]
    [InlineData("SEN-018", "0000000000000000", 0x00)]
    [InlineData("SEN-019", "FFFFFFFFFFFFFFFF", 0xC9)]
    public void Of_ReferenceBytes_GivesTheReferenceChecksum(string row, string hex, byte expected)
    {
        Assert.NotEmpty(row);
        Assert.Equal(expected, Crc8.Of(Convert.FromHexString(hex)));
    }
}
