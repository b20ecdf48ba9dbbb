using PileController.FarSide.Plants;

namespace PileController.FarSide.Tests.Plants;

public class ValveBodyTests
{
    private static readonly LinesSeen Opens = new(0, 0, true, false);

    [Fact]
    public void Valve_OpenLineOnForHalfItsTravel_StandsHalfOpenAndLetsAQuarterThrough()
    {
        ValveBody valve = new(30);
        Assert.Equal(0.25, valve.Run(Opens, 15), 12);
        Assert.Equal(0.5, valve.Opening, 12);
        Assert.False(valve.StandsOpen);
    }

    [Fact]
    public void Valve_RunsOn_StopsAtItsEnds()
    {
        ValveBody valve = new(30);
        Assert.Equal(0.75, valve.Run(Opens, 60), 12);
        Assert.True(valve.StandsOpen);
        valve.Run(new LinesSeen(0, 0, false, true), 60);
        Assert.True(valve.StandsShut);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Valve_BothLinesAlike_StandsStill(bool on)
    {
        ValveBody valve = new(30);
        valve.Run(Opens, 12);
        valve.Run(new LinesSeen(0, 0, on, on), 60);
        Assert.Equal(0.4, valve.Opening, 12);
    }

    [Fact]
    public void Valve_NotFitted_IsAnOpenPipe() => Assert.Equal(1, new ValveBody(0).Run(Opens, 1));
}
