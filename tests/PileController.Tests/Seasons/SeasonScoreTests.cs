using PileController.Control;
using PileController.Control.Decisions;
using PileController.Physics.Plants;
using PileController.Seasons;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Tests.Seasons;

/// <summary>The score's definitions, on a plant whose temperatures are known.</summary>
public sealed class SeasonScoreTests
{
    private const double Hour = 3600;

    [Fact]
    public void Lighting_AfterADayAtFiftyDegrees_IsDatedAtItsEnd()
    {
        SeasonScore score = new(new ControlSettings());
        Plant hot = PlantBuiltAt(55);

        AddHours(score, hot, 23);
        Assert.Null(score.LitOnDay);
        AddHours(score, hot, 2);

        Assert.Equal(1.0, score.LitOnDay!.Value, 2);
    }

    [Fact]
    public void Quiet_ADayBelowFortyAfterLighting_IsCounted()
    {
        SeasonScore score = new(new ControlSettings());
        AddHours(score, PlantBuiltAt(55), 25);
        Plant cool = PlantBuiltAt(35);

        AddHours(score, cool, 23);
        Assert.Null(score.StalledOnDay);
        AddHours(score, cool, 2);

        Assert.NotNull(score.StalledOnDay);
        Assert.Equal(25, score.HoursBelowFloor, 6);
        Assert.Equal(35, score.MinActiveZoneC!.Value, 1);
    }

    [Fact]
    public void NeverLit_FromDayTwenty_CountsAsQuietAndBelowTheFloor()
    {
        SeasonScore score = new(new ControlSettings());
        Plant cold = PlantBuiltAt(10);

        AddHours(score, cold, 21 * 24);

        Assert.Null(score.LitOnDay);
        Assert.Equal(20, score.StalledOnDay);
        Assert.InRange(score.HoursBelowFloor, 24, 26);
    }

    [Fact]
    public void ColdDegreeHours_BelowTheMinimum_AddUp()
    {
        Plant plant = PlantBuiltAt(55);
        ControlSettings settings = new() { HouseMinimumC = plant.HouseC + 2 };
        SeasonScore score = new(settings);

        AddHours(score, plant, 3);

        Assert.Equal(6, score.ColdDegreeHours, 6);
        Assert.Equal(3, score.HoursBelowMinimum, 6);
    }

    private static Plant PlantBuiltAt(double celsius)
    {
        PileSettings settings = PileSettings.AlderBank;
        PlantBuild build = HoldingBuild.Plant(settings) with { Heap = settings.Heap with { BuildTemperatureC = celsius } };
        var weather = Demo.Weather(HoldingBuild.Place(settings));
        return new Plant(build, weather, Plant.Fresh(build, weather, weather.CoversFrom));
    }

    private static void AddHours(SeasonScore score, Plant plant, int hours)
    {
        PileSettings settings = PileSettings.AlderBank;
        Decision decision = Controller.Step(
            settings.Control, Memory.Fresh, Control.Readings.RigReadings.None, [], new Instant(0, 0, 0)).Decision;
        for (int i = 0; i < hours; i++)
        {
            score.Add(plant, decision, Hour);
        }
    }
}
