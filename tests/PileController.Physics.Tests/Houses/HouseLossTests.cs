using CsCheck;
using PileController.Physics.Houses;

namespace PileController.Physics.Tests.Houses;

public class HouseLossTests
{
    private const double SquareFoot = 0.3048 * 0.3048;
    private const double CubicFoot = 0.028316846592;
    private const double WattsPerBtuPerHour = 0.293071070172;

    private static readonly IReadOnlyDictionary<string, ReferenceRow> Rows = ReferenceRow.Read("houses");

    // 1500 ft², U 0.70 BTU/(h·ft²·°F), 8000 ft³, one air change, 50 °F.
    private static readonly HouseBuild Example = new()
    {
        GlazingAreaM2 = 1500 * SquareFoot,
        GlazingUWPerM2K = 0.70 * 5.67826334111,
        VolumeM3 = 8000 * CubicFoot,
        AirChangesPerHour = 1,
    };

    private static readonly Dictionary<string, Func<double>> Computed = new()
    {
        ["GRN-002"] = () => HouseLoss.Of(Example, false).LeakWPerK / 1.8 / WattsPerBtuPerHour / 8000,
        ["GRN-013"] = () => -100 * SavedBySecondSkin(Example with { GlazingUWPerM2K = 6.8, AirChangesPerHour = 0 }),
        ["GRN-020"] = () => HouseLoss.Of(Example, false).GlazingWPerK * 50 / 1.8 / WattsPerBtuPerHour,
        ["GRN-021"] = () => HouseLoss.Of(Example, false).LeakWPerK * 50 / 1.8 / WattsPerBtuPerHour,
        ["GRN-022"] = () => HouseLoss.Of(Example, false).Watts(10, 10 - (50 / 1.8)) / 1000,
    };

    public static TheoryData<string> Ids => [.. Rows.Keys];

    [Theory]
    [MemberData(nameof(Ids))]
    public void House_AtPublishedConditions_AgreesWithTheReference(string id) => Rows[id].Check(Computed[id]());

    [Fact]
    public void Loss_OfAlderBank_IsThatOfTheSimulatedHouseWithinTheRoundingOfItsAir()
    {
        HouseBuild house = new();
        Assert.Equal(house.LossWPerK, HouseLoss.Of(house, false).TotalWPerK, 0.003 * house.LossWPerK);
    }

    [Fact]
    public void Curtain_Drawn_SavesItsShareOfTheGlazingOnly()
    {
        HouseBuild house = new();
        HouseLoss open = HouseLoss.Of(house, false);
        HouseLoss drawn = HouseLoss.Of(house, true);
        Assert.Equal(0.75 * open.GlazingWPerK, drawn.GlazingWPerK, 1e-9);
        Assert.Equal(open.LeakWPerK, drawn.LeakWPerK);
    }

    [Fact]
    public void Wind_OfTheDesignNight_LeavesTheAirChangesAsTheyAreTold() =>
        Gen.Double[-10, 50].Sample(k => Assert.Equal(1, HouseLoss.LeakRatio(HouseLoss.DesignWindMPerS, k), 1e-12));

    [Fact]
    public void Wind_Rising_LetsMoreIn() =>
        Gen.Select(Gen.Double[0, 20], Gen.Double[0.1, 10], Gen.Double[1, 50]).Sample((wind, more, k) =>
            Assert.True(HouseLoss.LeakRatio(wind + more, k) > HouseLoss.LeakRatio(wind, k)));

    [Fact]
    public void Wind_None_StillLetsTheWarmAirRiseOut() => Assert.InRange(HouseLoss.LeakRatio(0, 25), 0.4, 0.7);

    [Fact]
    public void Wind_OfAGale_TellsOnTheLeaksOnly()
    {
        HouseLoss calm = HouseLoss.Of(new HouseBuild(), false);
        HouseLoss gale = calm.InWind(15, 25);
        Assert.Equal(calm.GlazingWPerK, gale.GlazingWPerK);
        Assert.InRange(gale.LeakWPerK / calm.LeakWPerK, 1.8, 2.3);
    }

    [Fact]
    public void WhatIfs_OfAnyHouse_EachSaveSomethingAndNeverMoreThanThereIs() =>
        Gen.Select(Gen.Double[2, 2000], Gen.Double[0.5, 8], Gen.Double[0, 5], Gen.Double[0.01, 0.8], Gen.Double[0.5, 40]).Sample(
            (area, u, changes, curtain, differenceK) =>
            {
                HouseBuild house = new() { GlazingAreaM2 = area, GlazingUWPerM2K = u, AirChangesPerHour = changes, CurtainSaving = curtain };
                double now = HouseLoss.Of(house, false).Watts(7, 7 - differenceK);
                Assert.All(HouseWhatIf.All(house, 7, 7 - differenceK), change =>
                {
                    Assert.Equal(now, change.LossWatts + change.SavedWatts, 1e-9 * now);
                    Assert.InRange(change.SavedWatts, 1e-9 * now, now);
                });
            });

    [Fact]
    public void WhatIfs_ByName_AreTheFourTold() => Assert.Equal(
        ["curtain", "secondSkin", "thermalMass", "lowerSetPoint"], HouseWhatIf.All(new HouseBuild(), 7, -18).Select(w => w.Kind));

    [Fact]
    public void ThermalMass_OfFiveDrums_GivesItsWarmthOverTheNight() =>

        // 1000 kg × 4186 J/(kg·K) × 8 K over 14 h.
        Assert.Equal(664.4, HouseWhatIf.All(new HouseBuild(), 7, -18).Single(w => w.Kind == "thermalMass").SavedWatts, 0.1);

    [Fact]
    public void LowerSetPoint_ByThreeKelvin_SavesThreeKelvinsWorth()
    {
        HouseWhatIf lower = HouseWhatIf.All(new HouseBuild(), 7, -18).Single(w => w.Kind == "lowerSetPoint");
        Assert.Equal(3 * HouseLoss.Of(new HouseBuild(), false).TotalWPerK, lower.SavedWatts, 1e-9);
    }

    private static double SavedBySecondSkin(HouseBuild house)
    {
        HouseWhatIf skin = HouseWhatIf.All(house, 10, 0).Single(w => w.Kind == "secondSkin");
        return skin.SavedWatts / (skin.LossWatts + skin.SavedWatts);
    }
}
