using PileController.Control;
using PileController.Control.Readings;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Tests.Service;

/// <summary>What a tick of control leaves to the garbage collector: a small board runs it for years.</summary>
public sealed class StepAllocationTests
{
    private const int Ticks = 1000;

    [Fact]
    public void Step_ThousandLiveTicksOfTheDemo_MakesAKilobyteATickAtMostOnTheMedian()
    {
        PileSettings settings = PileSettings.AlderBank;
        Assert.Equal(DrawPolicy.Means, settings.Control.Policy);
        Holding holding = new(
            HoldingBuild.Plant(settings), settings.Control, settings.Rig, Demo.Weather(HoldingBuild.Place(settings)),
            HoldingBuild.StandardOffsetMinutes(settings), WarmStart.Shipped().State);
        long[] bytes = new long[Ticks];
        for (int i = 0; i < Ticks; i++)
        {
            RigReadings readings = holding.Read();
            Memory memory = holding.Memory;
            Instant now = holding.Now;
            long before = GC.GetAllocatedBytesForCurrentThread();
            Controller.Step(settings.Control, memory, readings, [], now);
            bytes[i] = GC.GetAllocatedBytesForCurrentThread() - before;
            holding.Tick(readings, []);
        }

        Array.Sort(bytes);
        Assert.InRange(bytes[Ticks / 2], 1, 1024);
    }
}
