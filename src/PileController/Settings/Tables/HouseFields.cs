using PileController.Physics.Houses;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "house".</summary>
internal static class HouseFields
{
    public static readonly FieldTable<HouseBuild> Table = new()
    {
        { "glazingArea", SquareMetres(2, 2000), h => h.GlazingAreaM2, (h, v) => h with { GlazingAreaM2 = v }, "Glazed surface." },
        { "glazingU", WattsPerM2Kelvin(0.5, 8), h => h.GlazingUWPerM2K, (h, v) => h with { GlazingUWPerM2K = v }, "Heat transmittance of the glazing." },
        { "floorArea", SquareMetres(1, 1000), h => h.FloorAreaM2, (h, v) => h with { FloorAreaM2 = v }, "Floor." },
        { "volume", CubicMetres(2, 5000), h => h.VolumeM3, (h, v) => h with { VolumeM3 = v }, "Air volume." },
        { "airChanges", PerHour(0, 10), h => h.AirChangesPerHour, (h, v) => h with { AirChangesPerHour = v }, "Air changes by leaks." },
        { "solarGain", Share(0, 0.9), h => h.SolarGain, (h, v) => h with { SolarGain = v }, "Share of the sun on the floor area that stays as heat." },
        { "curtainSaving", Share(0, 0.8), h => h.CurtainSaving, (h, v) => h with { CurtainSaving = v }, "Share of the glazing loss that the night curtain saves, 0 for none." },
        { "ventAbove", Celsius(10, 50), h => h.VentAboveC, (h, v) => h with { VentAboveC = v }, "Air temperature above which the vents open." },
        { "airStore", JoulesPerM2Kelvin(1000, 500_000), h => h.AirNodeJPerM2K, (h, v) => h with { AirNodeJPerM2K = v }, "Heat capacity of plants, benches and air per floor area." },
        { "floorStore", JoulesPerM2Kelvin(1000, 2_000_000), h => h.FloorJPerM2K, (h, v) => h with { FloorJPerM2K = v }, "Heat capacity of the soil that follows the day per floor area." },
        { "floorU", WattsPerM2Kelvin(0.1, 50), h => h.FloorUWPerM2K, (h, v) => h with { FloorUWPerM2K = v }, "Coupling of air and floor." },
        { "groundU", WattsPerM2Kelvin(0, 10), h => h.GroundUWPerM2K, (h, v) => h with { GroundUWPerM2K = v }, "Coupling of the floor and the deep ground." },
        { "ground", Celsius(-5, 30), h => h.GroundC, (h, v) => h with { GroundC = v }, "Temperature of the deep ground." },
        { "backupPower", Watts(0, 100_000), h => h.BackupWatts, (h, v) => h with { BackupWatts = v }, "Power of the backup heater; it runs only where control.told.backupFitted is true." },
    };
}
