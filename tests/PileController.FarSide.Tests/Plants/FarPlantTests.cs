using PileController.FarSide.Plants;
using PileController.Physics.Heaps;
using PileController.Physics.Houses;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;

namespace PileController.FarSide.Tests.Plants;

public class FarPlantTests
{
    private const double PulsesPerLitre = 450;
    private static readonly DateTimeOffset Begin = new(2026, 1, 31, 0, 0, 0, TimeSpan.Zero);
    private static readonly LinesSeen Pumps = new(1, 0, true, false);
    private static readonly WeatherSeries Nights = ColdNights.Of(Begin, 48, -6, 1);

    [Fact]
    public void Plant_PumpOnAndValveOpen_ShowsWarmSupplyAndTurnsTheWheel()
    {
        FarPlant plant = Lit();
        int before = plant.MilliC[1];
        int edges = Live(plant, Pumps, 600, 1);
        Assert.True(plant.MilliC[1] > before + 2000, $"supply {before} before, {plant.MilliC[1]} after");
        Assert.Equal(2 * PulsesPerLitre * plant.Plant.FlowLitresPerMinute * 9.75, edges, 0.05 * edges);
        Assert.Equal(1, plant.PumpStarts);
        Assert.True(plant.Plant.Heap.Ledger.CoilJ + plant.Plant.Heap.Ledger.DrumJ > 1e5);
    }

    [Fact]
    public void Plant_PumpOnButValveShut_MovesNoWater()
    {
        FarPlant plant = Lit();
        Assert.Equal(0, Live(plant, new LinesSeen(1, 0, false, false), 600, 1));
        Assert.Equal(0, plant.Plant.FlowLitresPerMinute);
    }

    [Fact]
    public void Plant_LinesOff_DrawsNothingAndCoolsWithTheNight()
    {
        FarPlant plant = Lit();
        int before = plant.MilliC[2];
        Assert.Equal(0, Live(plant, LinesSeen.Off, 3600, 10));
        Assert.True(plant.MilliC[2] < before, $"house {before} before, {plant.MilliC[2]} after");
        Assert.Equal(0, plant.PumpStarts);
        Assert.Equal(plant.Resting.HouseC, plant.Plant.HouseC, 1e-9);
    }

    [Fact]
    public void Plant_DrawnOnForTwoHours_HasAWarmerHouseThanTheOneAtRest()
    {
        FarPlant plant = Lit();
        Live(plant, Pumps, 7200, 10);
        Assert.True(plant.Plant.HouseC > plant.Resting.HouseC + 0.5, $"{plant.Plant.HouseC} against {plant.Resting.HouseC}");
    }

    // How often it is called must not matter: a look that comes late is no other plant.
    [Fact]
    public void Plant_LivedInOtherParts_ComesToTheSame()
    {
        FarPlant fine = Lit();
        FarPlant coarse = Lit();
        Live(fine, Pumps, 1200, 0.05);
        Live(coarse, Pumps, 1200, 10);
        Assert.Equal(fine.MilliC[0], coarse.MilliC[0], 100.0);
        Assert.Equal(fine.MilliC[1], coarse.MilliC[1], 400.0);
        Assert.Equal(fine.MilliC[2], coarse.MilliC[2], 100.0);
    }

    private static FarPlant Lit()
    {
        PlantBuild build = new(new HeapBuild { BuildTemperatureC = 55 }, new HouseBuild(), new LoopBuild(), new PowerBuild());
        PlantState state = Plant.Fresh(build, Nights, Begin.ToUnixTimeMilliseconds());
        return new FarPlant(
            state, Nights, [ProbeSpot.Parse("bed:0.45"), ProbeSpot.Parse("supply"), ProbeSpot.Parse("house")], PulsesPerLitre, 30);
    }

    private static int Live(FarPlant plant, LinesSeen lines, double seconds, double step)
    {
        int edges = 0;
        for (double done = 0; done < seconds - 1e-6; done += step)
        {
            plant.Live(lines, step);
            for (; plant.Wheel.IsDue; edges++)
            {
                plant.Wheel.Give();
            }
        }

        return edges;
    }
}
