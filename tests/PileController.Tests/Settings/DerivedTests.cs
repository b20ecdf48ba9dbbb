using PileController.Control;
using PileController.Control.Foresight;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Tests.Settings;

public class DerivedTests
{
    [Fact]
    public void Of_AlderBank_IsWhatTheControllerTakesByDefault()
    {
        ControlSettings derived = Derived.Of(PileSettings.AlderBank);
        Assert.Equal(new HouseTold(), derived.House);
        Assert.Equal(PileSettings.AlderBank.Control, derived with { Places = PileSettings.AlderBank.Control.Places });
    }

    [Fact]
    public void Parse_OfAHouseBuiltOtherwise_TellsTheControllerSo()
    {
        ControlSettings control = SettingsFile.Parse(
            """{ "house": { "floorArea": "60 m²", "curtainSaving": "0 %" }, "heap": { "height": "1.6 m" } }""").Settings.Control;
        Assert.Equal(2 * new HouseTold().FloorJPerK, control.House.FloorJPerK);
        Assert.Equal((30, 0, 1.6), (control.House.SunM2, control.House.CurtainWPerK, control.HeapHeightM));
    }

    // The model is told rounded figures and steps by the hour; the house it is held against is the plant's own.
    [Fact]
    public void HouseModel_ToldOfAlderBank_LivesAsThePlantsHouseDoes()
    {
        PileSettings settings = PileSettings.AlderBank;
        WeatherSeries weather = Demo.Weather(HoldingBuild.Place(settings));
        long at = weather.CoversFrom + 86_400_000L;
        LoneHouse house = new(HoldingBuild.Plant(settings), weather, at);
        HouseModel model = HouseModel.Of(settings.Control, HouseMemory.Fresh);
        HouseState state = new(house.HouseC, Math.Max(house.HouseC, 9), house.HouseC);
        double square = 0;
        const int hours = 40 * 24;
        for (int hour = 0; hour < hours; hour++)
        {
            double outside = 0;
            double sun = 0;
            for (int minute = 0; minute < 60; minute++)
            {
                house.Step(60, 200);
                WeatherSample sky = weather.At(house.UtcMilliseconds);
                outside += sky.OutsideC / 60;
                sun += sky.SunWPerM2 / 60;
            }

            state = model.Step(state, 3600, outside, sun * settings.Control.House.SunM2, 0, 200);
            square += (state.AirC - house.HouseC) * (state.AirC - house.HouseC) / hours;
        }

        Assert.InRange(Math.Sqrt(square), 0, 1);
    }
}
