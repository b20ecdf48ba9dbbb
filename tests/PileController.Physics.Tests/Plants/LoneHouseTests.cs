using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Tests.Plants;

public class LoneHouseTests
{
    [Fact]
    public void LoneHouse_BesideAPlantWithoutAnyHeat_GoesTheSameWay()
    {
        PlantBuild build = PlantVariant.Of(PlantVariant.Bare);
        WeatherSeries weather = Weathers.Of("New York");
        long start = Weathers.FirstOfNovember("New York", 2012);
        Plant plant = new(build, weather, Plant.Fresh(build, weather, start));
        LoneHouse house = new(build, weather, start);
        double coldest = double.PositiveInfinity;
        for (int i = 0; i < 20 * 8640; i++)
        {
            plant.Step(default, 10);
            house.Step(10, 0);
            coldest = Math.Min(coldest, house.HouseC);
            Assert.Equal(plant.HouseC, house.HouseC, 1e-9);
        }

        Assert.Equal(plant.UtcMilliseconds, house.UtcMilliseconds);
        Assert.True(coldest < 5, $"{coldest}");
    }

    [Fact]
    public void LoneHouse_Heated_IsWarmer()
    {
        PlantBuild build = PlantVariant.Of(PlantVariant.Shipped);
        long start = Weathers.FirstOfNovember("New York", 2012);
        LoneHouse plain = new(build, Weathers.Of("New York"), start);
        LoneHouse heated = new(build, Weathers.Of("New York"), start);
        for (int i = 0; i < 600; i++)
        {
            plain.Step(60, 0);
            heated.Step(60, 1000);
        }

        // 1000 W against a loss of 222 W/K and the floor: some kelvin.
        Assert.InRange(heated.HouseC - plain.HouseC, 1, 1000 / build.House.LossWPerK);
    }
}
