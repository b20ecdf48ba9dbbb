using PileController.Control.Allocation;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Control.Regulation;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Allocation;

public sealed class BaselinePolicyTests
{
    private static readonly HeapEstimate Lit = new(60, 60, 55, 0.5, 0, 0, 0, true, true);

    [Theory]
    [InlineData(DrawPolicy.Thermostat, 3, 9.4, true)]
    [InlineData(DrawPolicy.Thermostat, 3, 9.6, false)]
    [InlineData(DrawPolicy.Thermostat, 12, 14, true)]
    [InlineData(DrawPolicy.Timer, 3, 30, true)]
    [InlineData(DrawPolicy.Timer, 18, 30, true)]
    [InlineData(DrawPolicy.Timer, 7, 0, false)]
    [InlineData(DrawPolicy.Always, 12, 30, true)]
    [InlineData(DrawPolicy.None, 3, -10, false)]
    public void Decide_Rule_DrawsInFullOrNotAtAll(DrawPolicy policy, double hour, double house, bool draws)
    {
        Grant grant = Decide(policy, default, 55, house, hour);

        Assert.Equal(draws ? 9000 : 0, grant.TotalW);
        Assert.True(grant.OnOff);
    }

    [Theory]
    [InlineData(10.4, true)]
    [InlineData(10.6, false)]
    public void Decide_ThermostatRuns_GoesOnToTheEndOfItsBand(double house, bool draws) =>
        Assert.Equal(draws, Decide(DrawPolicy.Thermostat, new RegulatorMemory { ThermostatOn = true }, 55, house, 3).TotalW > 0);

    [Theory]
    [InlineData(34.9, false, false)]
    [InlineData(35.1, false, true)]
    [InlineData(44.9, true, false)]
    [InlineData(45, true, true)]
    public void Decide_CutOut_HoldsTheWaterBetweenItsTwoNumbers(double turns, bool wasOpen, bool draws)
    {
        Grant grant = Decide(DrawPolicy.Cutout, new RegulatorMemory { CutOut = wasOpen }, turns, 4, 3);

        Assert.Equal(draws, grant.TotalW > 0);
        Assert.Equal(draws ? Curb.None : Curb.Floor, grant.Curb);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Decide_TurnsProbeGone_TheCutOutStaysAsItWas(bool open)
    {
        RigReadings blind = Sound.Readings.Without(Channel.HeapTurns);
        Grant grant = BaselinePolicy.Decide(
            new ControlSettings { Policy = DrawPolicy.Cutout }, new RegulatorMemory { CutOut = open }, blind, Lit, new Reach(9000, 0, 9000, 0), 4, 3);

        Assert.Equal(open, grant.CutOut);
    }

    [Theory]
    [InlineData(DrawPolicy.Cutout)]
    [InlineData(DrawPolicy.Thermostat)]
    [InlineData(DrawPolicy.Timer)]
    [InlineData(DrawPolicy.Always)]
    public void Decide_NotLit_DrawsNothing(DrawPolicy policy)
    {
        Grant grant = BaselinePolicy.Decide(
            new ControlSettings { Policy = policy }, default, Sound.Readings, Lit with { Lit = false }, new Reach(9000, 0, 9000, 0), 0, 3);

        Assert.Equal((0, Curb.NotLit), (grant.TotalW, grant.Curb));
    }

    private static Grant Decide(DrawPolicy policy, RegulatorMemory memory, double turns, double house, double hour) => BaselinePolicy.Decide(
        new ControlSettings { Policy = policy, CutoutOffC = 35, CutoutOnC = 45 }, memory, Sound.Readings.With(Channel.HeapTurns, turns), Lit, new Reach(9000, 0, 9000, 0), house, hour);
}
