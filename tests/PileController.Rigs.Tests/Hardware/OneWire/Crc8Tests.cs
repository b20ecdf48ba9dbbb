using PileController.Rigs.Hardware.OneWire;

namespace PileController.Rigs.Tests.Hardware.OneWire;

public class Crc8Tests
{
    // SEN-011...013: application note 27 example as asserted in ten public test suites; SEN-014: ROM example in a
    // public firmware test; SEN-015, 016: prefixes in a public test; SEN-017...019: computed from the formula.
    [Theory]
    [InlineData("021CB801000000", 0xA2)] // SEN-011
    [InlineData("021CB801000000A2", 0x00)] // SEN-012
    [InlineData("313233343536373839", 0xA1)] // SEN-013
    [InlineData("28AA1E2C1D1302", 0x6E)] // SEN-014
    [InlineData("02", 0xBC)] // SEN-015
    [InlineData("021C", 0xAF)] // SEN-016
    [InlineData("50054B467FFF0C10", 0x1C)] // SEN-017
    [InlineData("0000000000000000", 0x00)] // SEN-018
    [InlineData("FFFFFFFFFFFFFFFF", 0xC9)] // SEN-019
    public void Of_ReferenceBytes_GivesTheReferenceChecksum(string hex, byte expected) =>
        Assert.Equal(expected, Crc8.Of(Convert.FromHexString(hex)));
}
