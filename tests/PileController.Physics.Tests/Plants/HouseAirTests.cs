using PileController.Physics.Heaps;
using PileController.Physics.Houses;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Tests.Plants;

/// <summary>The stand-in for the house's air: it goes the right way, within what air can be.</summary>
public class HouseAirTests
{
    private static readonly PlantBuild Closed = new(new HeapBuild(), new HouseBuild(), new LoopBuild(), new PowerBuild());
    private static readonly PlantBuild Through = Closed with { Heap = Closed.Heap with { Duct = Closed.Heap.Duct with { ThroughHeap = true } } };
    private static readonly WeatherSample Night = new(0, 0, 2, 0.8, 101_325);

    [Theory]
    [InlineData(-40)]
    [InlineData(-10)]
    [InlineData(8)]
    [InlineData(60)]
    public void Both_OfAnyHouse_AreWithinWhatAirCanBe(double houseC)
    {
        foreach (WeatherSample sky in (WeatherSample[])[Night, Night with { OutsideC = -45 }, Night with { OutsideC = 35, SunWPerM2 = 1000 }])
        {
            foreach (bool blows in (bool[])[false, true])
            {
                Assert.InRange(HouseAir.HumidityPercent(Through, houseC, sky, blows), 0, 100);
                Assert.InRange(HouseAir.CarbonDioxidePpm(Through, houseC, 60, sky, blows), 60, 40_000);
            }
        }
    }

    [Fact]
    public void HumidityPercent_WarmerHouse_IsDrier() => Assert.True(
        HouseAir.HumidityPercent(Closed, 20, Night, false) < HouseAir.HumidityPercent(Closed, 8, Night, false));

    [Fact]
    public void CarbonDioxidePpm_AirDrawnThroughABusyHeap_IsFoulAndThroughAClosedDuctIsNot()
    {
        Assert.InRange(HouseAir.CarbonDioxidePpm(Through, 8, 55, Night, true), 1_500, 40_000);
        Assert.InRange(HouseAir.CarbonDioxidePpm(Closed, 8, 55, Night, true), 425, 1_500);
        Assert.True(HouseAir.CarbonDioxidePpm(Through, 8, 55, Night, false) < HouseAir.CarbonDioxidePpm(Through, 8, 55, Night, true));
    }

    [Fact]
    public void CarbonDioxidePpm_OpenVentsOrSun_BringItDown()
    {
        double night = HouseAir.CarbonDioxidePpm(Closed, 8, 55, Night, false);

        Assert.True(HouseAir.CarbonDioxidePpm(Closed, 30, 55, Night, false) < night);
        Assert.True(HouseAir.CarbonDioxidePpm(Closed, 8, 55, Night with { SunWPerM2 = 300 }, false) < night);
    }
}
