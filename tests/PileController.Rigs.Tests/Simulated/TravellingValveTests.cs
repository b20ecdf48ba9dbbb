using CsCheck;
using PileController.Control.Regulation;
using PileController.Rigs.Simulated;

namespace PileController.Rigs.Tests.Simulated;

public class TravellingValveTests
{
    [Fact]
    public void Travel_FromShutToOpen_TakesTheTravelTime()
    {
        TravellingValve valve = new(40);
        List<double> positions = [];
        for (int tick = 0; tick < 5; tick++)
        {
            valve.Travel(1, 10);
            positions.Add(valve.Position);
        }

        Assert.Equal([0.25, 0.5, 0.75, 1, 1], positions);
    }

    [Fact]
    public void Travel_ArrivingOnTheWay_StopsAtItsTarget()
    {
        TravellingValve valve = new(40);

        // A quarter of the way in 10 s; told 0.125 it arrives after 5 s and stands for 5 s.
        double mean = valve.Travel(0.125, 10);

        Assert.Equal(0.125, valve.Position);
        Assert.Equal(((0.0625 * 5) + (0.125 * 5)) / 10, mean, 12);
    }

    [Fact]
    public void Travel_UnderWay_LetsTheMeanOfTheWayThrough() => Assert.Equal(0.125, new TravellingValve(40).Travel(1, 10));

    [Fact]
    public void Travel_InSmallSteps_LetsThroughWhatOneStepDoes() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Int[1, 20], Gen.Double[5, 100]).Sample(
            (from, to, steps, travelSeconds) =>
            {
                TravellingValve whole = new(travelSeconds) { Position = from };
                TravellingValve parts = new(travelSeconds) { Position = from };
                double mean = whole.Travel(to, 10);
                double sum = 0;
                for (int i = 0; i < steps; i++)
                {
                    sum += parts.Travel(to, 10.0 / steps);
                }

                Assert.Equal(mean, sum / steps, 1e-9);
                Assert.Equal(whole.Position, parts.Position, 1e-9);
                Assert.InRange(whole.Position, Math.Min(from, to), Math.Max(from, to));
            });

    [Fact]
    public void Travel_WithoutFeedback_DriftsAndIsSetRightOnceADay()
    {
        TravellingValve valve = new(30, ValveFeedback.None, 0.02);
        double worst = 0;
        for (int tick = 0; tick < 8000; tick++)
        {
            valve.Travel(0.2 + (0.2 * (tick / 60 % 2)), 10);
            worst = Math.Max(worst, Math.Abs(valve.Position - valve.Believed));
        }

        Assert.InRange(worst, 0.1, 1);
        for (int tick = 0; tick < 700; tick++)
        {
            valve.Travel(0.2, 10);
        }

        Assert.Equal(0.2, valve.Position, 0.01);
    }

    [Fact]
    public void Travel_WithEndSwitches_IsSetRightWhenItArrives()
    {
        TravellingValve valve = new(30, ValveFeedback.EndSwitches, 0.02);
        for (int tick = 0; tick < 600; tick++)
        {
            valve.Travel(0.2 + (0.2 * (tick / 60 % 2)), 10);
        }

        Assert.NotEqual(valve.Believed, valve.Position);
        valve.Travel(1, 60);

        Assert.Equal((1, 1), (valve.Position, valve.Believed));
    }

    [Fact]
    public void Travel_NoValve_IsAlwaysOpen() => Assert.Equal(1, new TravellingValve(0).Travel(0, 10));

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Ctor_BadTime_IsRefusedByName(double seconds) =>
        Assert.Contains(
            "ValveTravelSeconds", Assert.Throws<ArgumentException>(() => new TravellingValve(seconds)).Message, StringComparison.Ordinal);
}
