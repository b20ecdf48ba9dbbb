namespace PileController.FarSide.Tests;

public class PaceTests
{
    [Fact]
    public void Pace_LookTakenLate_NextStandsAtAMultipleOfItsTimeAgain()
    {
        Pace pace = new(50);
        Assert.False(pace.TakeLook(49));
        Assert.True(pace.TakeLook(62));
        Assert.Equal(100, pace.NextLook);
        Assert.True(pace.TakeLook(388));
        Assert.Equal(400, pace.NextLook);
    }

    [Fact]
    public void Wait_EdgeBeforeTheLook_IsUntilTheEdgeButNoCloserThanMayBe()
    {
        Pace pace = new(50);
        Assert.Equal(17, pace.Wait(10, 0.0165, 0));
        Assert.Equal(3, pace.Wait(10, 0, 3));
        Assert.Equal(40, pace.Wait(10, double.PositiveInfinity, 0));
        Assert.Equal(0, pace.Wait(55, double.PositiveInfinity, 3));
    }
}
