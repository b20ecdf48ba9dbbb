using PileController.Physics.Fluids;

namespace PileController.Physics.Exchangers;

/// <summary>A metal duct in the heap whose air never meets the compost: it carries sensible heat only.</summary>
/// <param name="LengthM">Length, m.</param>
/// <param name="DiameterM">Diameter, m.</param>
public readonly record struct ClosedDuct(double LengthM, double DiameterM)
{
    /// <summary>Conductance of the whole duct, W/K, of air film and bed in series; the metal's own resistance is nothing beside them.</summary>
    /// <param name="flowM3PerS">Air at the inlet, m³/s, 0 or more.</param>
    /// <param name="inletC">Air at the inlet, °C, −60 to 150.</param>
    /// <param name="bedWPerMK">What the bed gives a metre of duct, W/(m·K).</param>
    public double ConductanceWPerK(double flowM3PerS, double inletC, double bedWPerMK)
    {
        Require.Positive(bedWPerMK, "W/(m·K)");
        double film = Surroundings.FilmMKPerW(DiameterM, TubeFilm.AirWPerM2K(flowM3PerS, DiameterM, inletC));
        return LengthM / (film + (1 / bedWPerMK));
    }

    /// <summary>Heat-capacity rate of the air, W/K.</summary>
    /// <param name="flowM3PerS">Air at the inlet, m³/s, 0 or more.</param>
    /// <param name="inletC">Air at the inlet, °C.</param>
    /// <param name="humidityRatio">kg of vapour per kg of dry air.</param>
    /// <param name="pressurePa">Pressure, Pa.</param>
    public static double CapacityRateWPerK(
        double flowM3PerS, double inletC, double humidityRatio = 0, double pressurePa = MoistAir.StandardPressurePa) =>
        flowM3PerS / MoistAir.SpecificVolumeM3PerKg(inletC, humidityRatio, pressurePa)
            * (MoistAir.DryAirJPerKgK + (humidityRatio * MoistAir.VapourJPerKgK));

    /// <summary>Heat the air takes from the bed, W (negative: gives to it).</summary>
    /// <param name="flowM3PerS">Air at the inlet, m³/s, 0 or more.</param>
    /// <param name="inletC">Air at the inlet, °C, −60 to 150.</param>
    /// <param name="bedC">Bed, °C.</param>
    /// <param name="bedWPerMK">What the bed gives a metre of duct, W/(m·K).</param>
    public double HeatWatts(double flowM3PerS, double inletC, double bedC, double bedWPerMK) =>
        SoakedRun.HeatWatts(inletC, bedC, ConductanceWPerK(flowM3PerS, inletC, bedWPerMK), CapacityRateWPerK(flowM3PerS, inletC));
}
