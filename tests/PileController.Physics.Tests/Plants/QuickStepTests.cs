using PileController.Physics.Heaps;
using PileController.Physics.Plants;

namespace PileController.Physics.Tests.Plants;

/// <summary>Quick steps longer than the usual ten seconds, as the season ahead asks for.</summary>
public class QuickStepTests
{
    private static readonly PlantInputs Full = new(1, 1, 1, false, 0);

    [Theory]
    [InlineData(120, 30)]
    [InlineData(120, 60)]
    [InlineData(1000, 60)]
    public void Draw_InLongQuickSteps_IsThatOfUsualOnes(double coilM, double quickSeconds)
    {
        double usual = Drawn(coilM, Plant.UsualQuickSeconds).Heap.Ledger.DrawnJ;
        double quick = Drawn(coilM, quickSeconds).Heap.Ledger.DrawnJ;
        Assert.InRange(quick / usual, 0.99, 1.01);
    }

    [Theory]
    [InlineData(120)]
    [InlineData(1000)]
    public void BedAgainstThePipe_InTheLongestQuickSteps_NeverCoolsBelowTheWater(double coilM)
    {
        Plant plant = Hot(coilM, Heap.SlowStepSeconds);
        for (int minute = 0; minute < 3 * 1440; minute++)
        {
            double coldest = Math.Min(plant.ReturnC, plant.TankC);
            plant.Step(Full, 60);
            Assert.True(plant.Heap.WallC >= Math.Min(coldest, plant.ReturnC) - 1e-9, $"minute {minute}: {plant.Heap.WallC} under {coldest}");
        }
    }

    [Fact]
    public void LongestQuickStep_OfADensePipe_IsShorter()
    {
        Assert.True(Hot(1000, 60).Heap.LongestQuickSeconds < Hot(120, 60).Heap.LongestQuickSeconds);
        Assert.Equal(Heap.SlowStepSeconds, new Heap(new HeapBuild { Coil = new CoilBuild { LengthM = 0 } }).LongestQuickSeconds);
    }

    [Theory]
    [InlineData(9)]
    [InlineData(61)]
    [InlineData(double.NaN)]
    public void QuickStep_OutOfItsRange_IsRefused(double seconds) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Hot(120, seconds));

    private static Plant Drawn(double coilM, double quickSeconds)
    {
        Plant plant = Hot(coilM, quickSeconds);
        for (int minute = 0; minute < 5 * 1440; minute++)
        {
            plant.Step(minute % 1440 < 900 ? Full : default, 60);
        }

        return plant;
    }

    private static Plant Hot(double coilM, double quickSeconds)
    {
        PlantBuild build = PlantVariant.Holding(
            new HeapBuild { BuildTemperatureC = 55, Coil = new CoilBuild { LengthM = coilM } });
        long start = Weathers.FirstOfNovember("New York", 2012);
        return new Plant(build, Weathers.Of("New York"), Plant.Fresh(build, Weathers.Of("New York"), start), quickSeconds);
    }
}
