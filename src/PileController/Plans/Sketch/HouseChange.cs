using PileController.Physics.Houses;
using PileController.Units;

namespace PileController.Plans.Sketch;

/// <summary>A change to the house.</summary>
/// <param name="Kind">Its word in the JSON.</param>
/// <param name="Name">The change, as the subject of a sentence in the singular.</param>
/// <param name="Change">The house with it.</param>
/// <param name="LowerKelvin">How far the set points are lowered, K.</param>
/// <param name="NightStoreWatts">What a store gives the house over the design night, W.</param>
internal sealed record HouseChange(
    string Kind, Func<UnitSystem, string> Name, Func<HouseBuild, HouseBuild> Change, double LowerKelvin = 0, double NightStoreWatts = 0)
{
    // A close curtain saves about this share of the glazing's loss (common practice, no source).
    private const double CloseCurtain = 0.4;

    // A second layer of film: 34 % off the U of single glazing (Rasheed, Lee, Lee) of 5.98 W/(m²·K) (R-value list,
    // single glass 0.95) is the resistance of film and air gap, m²·K/W.
    private const double SecondSkinM2KPerW = ((1 / (1 - 0.34)) - 1) / 5.98;

    // Water in drums along the wall: litres per square metre of floor, the swing it is let and the length of a night
    // (common practice, no source).
    private const double StoreLitresPerM2 = 20;
    private const double StoreSwingKelvin = 5;
    private const double NightSeconds = 14 * 3600;
    private const double WaterJPerLitreK = 4180;

    private const double LoweredKelvin = 2;

    /// <summary>The changes that make a difference to a house.</summary>
    public static IEnumerable<HouseChange> For(HouseBuild house)
    {
        if (house.CurtainSaving < CloseCurtain)
        {
            yield return new("curtain", _ => "a close night curtain (40 % off the glazing's loss)", h => h with { CurtainSaving = CloseCurtain });
        }

        yield return new(
            "secondSkin", _ => "a second skin of film inside the glazing",
            h => h with { GlazingUWPerM2K = 1 / ((1 / h.GlazingUWPerM2K) + SecondSkinM2KPerW) });
        yield return new("draughts", _ => "halving the leaks", h => h with { AirChangesPerHour = h.AirChangesPerHour / 2 });
        yield return new(
            "thermalMass",
            units => $"water in drums, {Show.Volume(StoreLitresPerM2 * house.FloorAreaM2, units)} let swing by {Show.Difference(StoreSwingKelvin, units)},", h => h,
            NightStoreWatts: StoreLitresPerM2 * house.FloorAreaM2 * WaterJPerLitreK * StoreSwingKelvin / NightSeconds);
        yield return new("lowerSetPoint", units => $"a set point {Show.Difference(LoweredKelvin, units)} lower", h => h, LowerKelvin: LoweredKelvin);
    }
}
