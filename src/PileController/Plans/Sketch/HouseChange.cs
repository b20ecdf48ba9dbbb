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
    private const double WaterJPerKgK = 4186;

    /// <summary>The changes that make a difference to a house.</summary>
    public static IEnumerable<HouseChange> For(HouseBuild house)
    {
        if (house.CurtainSaving < HouseWhatIf.CurtainSaving)
        {
            yield return new(
                "curtain", _ => $"a close night curtain ({100 * HouseWhatIf.CurtainSaving:F0} % off the glazing's loss)",
                h => h with { CurtainSaving = HouseWhatIf.CurtainSaving });
        }

        yield return new(
            "secondSkin", _ => "a second skin of film inside the glazing",
            h => h with { GlazingUWPerM2K = 1 / ((1 / h.GlazingUWPerM2K) + HouseWhatIf.SkinM2KPerW) });
        yield return new("draughts", _ => "halving the leaks", h => h with { AirChangesPerHour = h.AirChangesPerHour / 2 });
        yield return new(
            "thermalMass",
            u => $"water in drums, {Show.Volume(HouseWhatIf.BarrelsKg, u)} let swing by {Show.Difference(HouseWhatIf.BarrelSwingK, u)},", h => h,
            NightStoreWatts: HouseWhatIf.BarrelsKg * WaterJPerKgK * HouseWhatIf.BarrelSwingK / (HouseWhatIf.NightHours * 3600));
        yield return new(
            "lowerSetPoint", u => $"a set point {Show.Difference(HouseWhatIf.LoweredK, u)} lower", h => h, LowerKelvin: HouseWhatIf.LoweredK);
    }
}
