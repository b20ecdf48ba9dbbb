using PileController.Physics.Fluids;

namespace PileController.Physics.Heaps;

/// <summary>
/// Air drawn through the heap itself: it takes the heap's temperature, leaves saturated, and most of what it carries
/// is the heat of the water it has taken up. Watts count enthalpy above liquid water at 0 °C, so that they are what the
/// heap pays once the water lost has been given back cold.
/// </summary>
/// <param name="DryAirKgPerS">Dry air, kg/s.</param>
/// <param name="InletC">Air before the heap, °C.</param>
/// <param name="InletRatio">Its humidity ratio, kg/kg.</param>
/// <param name="HeapC">Heap where the air leaves it, °C.</param>
/// <param name="HeapRatio">Humidity ratio of air saturated at that temperature, kg/kg.</param>
/// <param name="PressurePa">Pressure, Pa.</param>
public readonly record struct ThroughAir(
    double DryAirKgPerS, double InletC, double InletRatio, double HeapC, double HeapRatio, double PressurePa)
{
    private const double SecondsPerDay = 86_400;

    // Pore air must keep 5 % of oxygen by volume (Manitoba Agriculture compost elements); fresh air has 20.95 %.
    private const double UsableOxygen = (20.95 - 5) / 20.95;

    /// <summary>Heat that warms air and vapour, W.</summary>
    public double SensibleWatts => DryAirKgPerS * (MoistAir.EnthalpyJPerKg(HeapC, InletRatio) - MoistAir.EnthalpyJPerKg(InletC, InletRatio));

    /// <summary>Heat in the water taken up, W; negative where the air comes in wetter than it leaves.</summary>
    public double LatentWatts => DryAirKgPerS * (MoistAir.EnthalpyJPerKg(HeapC, HeapRatio) - MoistAir.EnthalpyJPerKg(HeapC, InletRatio));

    /// <summary>Both, W.</summary>
    public double TotalWatts => SensibleWatts + LatentWatts;

    /// <summary>What the same air, dry, would carry out of a closed duct were it warmed to the heap's temperature, W.</summary>
    public double ClosedDuctWatts => DryAirKgPerS * MoistAir.DryAirJPerKgK * (HeapC - InletC);

    /// <summary>Water the heap loses, kg/day.</summary>
    public double WaterLostKgPerDay => DryAirKgPerS * (HeapRatio - InletRatio) * SecondsPerDay;

    /// <summary>Oxygen carried in, kg/day.</summary>
    public double OxygenSuppliedKgPerDay => DryAirKgPerS * Stuff.OxygenInAir * SecondsPerDay;

    /// <summary>Heat the microbes can make of that oxygen, W, when the air leaves with 5 % of it.</summary>
    public double HeatOfOxygenWatts => DryAirKgPerS * Stuff.OxygenInAir * UsableOxygen * Stuff.HeatPerSolids / Stuff.OxygenPerSolids;

    /// <summary>Carbon dioxide the air carries off when it leaves with 5 % of oxygen, kg/day: the most a sound heap gives it.</summary>
    public double CarbonDioxideKgPerDay =>
        OxygenSuppliedKgPerDay * UsableOxygen * Stuff.CarbonDioxidePerSolids / Stuff.OxygenPerSolids;

    /// <summary>A stream of air through a heap.</summary>
    /// <param name="flowM3PerS">Air as it comes in, m³/s, 0 or more.</param>
    /// <param name="inletC">Air before the heap, °C, −40 to 60.</param>
    /// <param name="inletHumidity">Its relative humidity, 0 to 1.</param>
    /// <param name="heapC">Heap where the air leaves it, °C, 0 to 90.</param>
    /// <param name="pressurePa">Pressure, Pa, above the vapour's.</param>
    public static ThroughAir Of(
        double flowM3PerS, double inletC, double inletHumidity, double heapC, double pressurePa = MoistAir.StandardPressurePa)
    {
        Require.NotNegative(flowM3PerS, "m³/s");
        Require.Within(inletC, -40, 60, "°C");
        Require.Within(heapC, 0, 90, "°C");
        double inletRatio = MoistAir.HumidityRatioFromRelative(inletC, inletHumidity, pressurePa);
        double dryAir = flowM3PerS / MoistAir.SpecificVolumeM3PerKg(inletC, inletRatio, pressurePa);
        return new ThroughAir(dryAir, inletC, inletRatio, heapC, MoistAir.SaturatedHumidityRatio(heapC, pressurePa), pressurePa);
    }

    /// <summary>What the air gives when it is cooled after the heap.</summary>
    /// <param name="houseC">Temperature to which it is cooled, °C, 0 up to the heap's.</param>
    public Condensed CooledTo(double houseC)
    {
        Require.Within(houseC, 0, HeapC, "°C");
        double left = MoistAir.SaturatedHumidityRatio(houseC, PressurePa);
        double waterKgPerS = DryAirKgPerS * (HeapRatio - left);
        double given = DryAirKgPerS * (MoistAir.EnthalpyJPerKg(HeapC, HeapRatio) - MoistAir.EnthalpyJPerKg(houseC, left));
        return new Condensed(
            given - (waterKgPerS * Water.EnthalpyJPerKg(houseC)),
            waterKgPerS * SecondsPerDay / Water.DensityKgPerM3(houseC) * 1000);
    }
}

/// <summary>What saturated air gives when it is cooled.</summary>
/// <param name="ReleasedWatts">Heat given, W; what the condensate itself still holds at its temperature is not counted.</param>
/// <param name="CondensateLitresPerDay">Water that drips from it, L/day.</param>
public readonly record struct Condensed(double ReleasedWatts, double CondensateLitresPerDay);
