using PileController.FarSide.Kernel;

namespace PileController.FarSide.Tests.Kernel;

public class SignalsTests
{
    [Theory]
    [InlineData("0 1 1000000 250000 0\n1 0 0 0 0\n", 0, 0.25)]
    [InlineData("0 0 1000000 250000 0\n", 0, 0)]
    [InlineData("0 1 0 0 0\n", 0, 0)]
    [InlineData("0 1 1000000 250000 0\n1 1 1000000 1000000 0\n", 1, 1)]
    [InlineData("", 0, 0)]
    public void BoardDuty_State_IsShareOfThePeriodWhileEnabled(string state, int channel, double duty) =>
        Assert.Equal(duty, Signals.BoardDuty(state, channel), 12);

    [Theory]
    [InlineData("40 06 00\n40 07 00\n40 08 00\n40 09 04\n", 0, 0.25)]
    [InlineData("40 06 00\n40 07 10\n40 08 00\n40 09 00\n", 0, 1)]
    [InlineData("40 06 00\n40 07 10\n40 08 00\n40 09 10\n", 0, 0)]
    [InlineData("40 0a 00\n40 0b 00\n40 0c 00\n40 0d 08\n", 1, 0.5)]
    [InlineData("41 06 00\n41 07 10\n41 08 00\n41 09 00\n", 0, 0)]
    public void ChipDuty_Registers_OffGoesBeforeFullAndFullBeforeTheShare(string registers, int channel, double duty) =>
        Assert.Equal(duty, Signals.ChipDuty(registers, 0x40, channel), 12);
}
