using PileController.Physics.Heaps;

namespace PileController.Control.Estimation;

/// <summary>What living does to a cubic metre of bed.</summary>
/// <param name="WattsPerM3">
/// Warmth it gains: heat made, less what the draught carries off, W/m³. What leaves as vapour no longer has to be kept warm, so
/// of its heat only the latent part counts.
/// </param>
/// <param name="SpentWPerM3K">Heat capacity it loses to drying and burning, W/(m³·K).</param>
internal readonly record struct BedLife(double WattsPerM3, double SpentWPerM3K)
{
    // Heat per kilogram of dry air whose oxygen is all used, J/kg.
    private const double JPerKgAir = Stuff.OxygenInAir * Stuff.HeatPerSolids / Stuff.OxygenPerSolids;

    /// <summary>The life of a bed at one temperature.</summary>
    /// <param name="demandWPerM3">Heat its microbes would make at their best temperature with plenty of air, W/m³.</param>
    /// <param name="celsius">Its temperature, °C.</param>
    /// <param name="bed">The curves there.</param>
    /// <param name="airKgPerM3S">Dry air that goes through it, kg/(m³·s).</param>
    /// <param name="air">That air as it comes in.</param>
    public static BedLife Of(double demandWPerM3, double celsius, in BedAt bed, double airKgPerM3S, in OutsideAir air)
    {
        double madeW = HeapAir.TakenKgPerS(demandWPerM3 * bed.Work, airKgPerM3S * JPerKgAir);
        double burnt = madeW / Stuff.HeatPerSolids;
        double dried = (airKgPerM3S * (bed.VapourPerGas - air.VapourPerGas)) - (Stuff.WaterPerSolids * burnt);
        double spent = (Stuff.SolidsJPerKgK * burnt) + (Stuff.WaterJPerKgK * dried);
        return new BedLife(madeW - (airKgPerM3S * (bed.GasJPerKg - air.JPerKg)) + (celsius * spent), spent);
    }
}
