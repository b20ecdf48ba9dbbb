using PileController.FarSide.Plants;

namespace PileController.FarSide.Tests.Plants;

public class PulseWheelTests
{
    [Theory]
    [InlineData(450, 4.2, 0.05)]
    [InlineData(450, 4.2, 0.013)]
    [InlineData(20, 0.7, 0.25)]
    public void Wheel_MinuteOfFlow_GivesThePulsesOfItsLitres(double pulsesPerLitre, double litresPerMinute, double step)
    {
        PulseWheel wheel = new(pulsesPerLitre);
        int rising = 0;
        for (int i = 1; i <= 60 / step; i++)
        {
            wheel.Turn(litresPerMinute, step);
            while (wheel.IsDue)
            {
                rising += wheel.Give() ? 1 : 0;
            }
        }

        Assert.InRange(rising, (int)(pulsesPerLitre * litresPerMinute) - 1, (int)(pulsesPerLitre * litresPerMinute) + 1);
    }

    [Fact]
    public void Wheel_WaterStops_OwesNoMoreEdges()
    {
        PulseWheel wheel = new(450);
        wheel.Turn(4, 0.01);
        wheel.Turn(0, 60);
        Assert.False(wheel.IsDue);
        Assert.Equal(double.PositiveInfinity, wheel.SecondsToEdge);
    }

    [Fact]
    public void Wheel_CalledLate_StillOwesEveryEdge()
    {
        PulseWheel wheel = new(60);
        wheel.Turn(1, 10);
        int edges = 0;
        for (; wheel.IsDue; edges++)
        {
            wheel.Give();
        }

        Assert.Equal(20, edges);
    }
}
