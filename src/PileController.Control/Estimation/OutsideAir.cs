using PileController.Physics.Heaps;

namespace PileController.Control.Estimation;

/// <summary>The air outside, as the draught takes it in.</summary>
/// <param name="KgPerM3">Density, kg/m³.</param>
/// <param name="JPerKg">Enthalpy per kilogram of dry air, above 0 °C, J/kg.</param>
/// <param name="VapourPerGas">Water vapour, kg/kg of dry air.</param>
internal readonly record struct OutsideAir(double KgPerM3, double JPerKg, double VapourPerGas)
{
    // Outside air is humid by night and winter (common practice, no source); it hardly matters beside the heap's own vapour.
    private const double Humidity = 0.8;

    /// <summary>The air at a temperature, °C.</summary>
    public static OutsideAir At(double celsius)
    {
        BedAt saturated = BedCurves.At(celsius);
        double dryJPerKg = Stuff.GasJPerKgK * celsius;
        return new OutsideAir(
            saturated.GasKgPerM3, dryJPerKg + (Humidity * (saturated.GasJPerKg - dryJPerKg)), Humidity * saturated.VapourPerGas);
    }
}
