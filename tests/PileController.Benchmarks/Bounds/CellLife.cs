using PileController.Physics;
using PileController.Physics.Fluids;
using PileController.Physics.Heaps;

namespace PileController.Benchmarks.Bounds;

/// <summary>What one cell of the bed holds: heat above 0 °C, fast and slow solids, inert solids, water.</summary>
internal readonly record struct Cell(double HeatJ, double FastKg, double SlowKg, double InertKg, double WaterKg)
{
    public double JPerK => ((FastKg + SlowKg + InertKg) * Stuff.SolidsJPerKgK) + (WaterKg * Stuff.WaterJPerKgK);

    public double Celsius => HeatJ / JPerK;
}

/// <summary>How fast a cell changes by living: heat made less what its gas carries off, and its masses.</summary>
internal readonly record struct CellRates(double HeatW, double FastKgPerS, double SlowKgPerS, double WaterKgPerS)
{
    public double Dot(in CellRates worth) => (HeatW * worth.HeatW) + (FastKgPerS * worth.FastKgPerS)
        + (SlowKgPerS * worth.SlowKgPerS) + (WaterKgPerS * worth.WaterKgPerS);

    public CellRates Less(in CellRates other, double over) => new(
        (HeatW - other.HeatW) / over, (FastKgPerS - other.FastKgPerS) / over, (SlowKgPerS - other.SlowKgPerS) / over,
        (WaterKgPerS - other.WaterKgPerS) / over);
}

/// <summary>
/// The heap's law of life for one cell, once more: prices need its slopes and the certificate needs it for cells that
/// never were. The self-test holds it against the heap itself.
/// </summary>
internal sealed class CellLife(HeapBuild build)
{
    private const double PressurePa = 101_325;
    private const double DryAirGasConstant = 287.05;
    private const double VapourGasConstant = 461.5;
    private const double FastPerSecond = 0.10 / 86_400;
    private const double SlowPerSecond = 0.009 / 86_400;
    private const double FastMesophilic = 0.8;
    private const double SlowMesophilic = 0.25;
    private const double SettlingSeconds = 14 * 86_400;
    private const double StepSeconds = Heap.SlowStepSeconds;

    private double _permeabilityM2;
    private double _dryInKgPerM3;
    private double _outsideKgPerM3;
    private double _ratioIn;
    private double _enthalpyIn;

    /// <summary>Sets weather and age.</summary>
    public void Under(double outsideC, double humidity, double ageSeconds)
    {
        double vapourPa = humidity * SaturationPa(outsideC);
        double kelvin = outsideC + 273.15;
        _dryInKgPerM3 = (PressurePa - vapourPa) / (DryAirGasConstant * kelvin);
        _outsideKgPerM3 = _dryInKgPerM3 + (vapourPa / (VapourGasConstant * kelvin));
        _ratioIn = 0.621945 * vapourPa / (PressurePa - vapourPa);
        _enthalpyIn = (Stuff.GasJPerKgK * outsideC) + (_ratioIn * (Stuff.VapourJPerKg + (Stuff.VapourJPerKgK * outsideC)));
        _permeabilityM2 = build.PermeabilityM2
            * (1 + ((build.FreshPermeabilityRatio - 1) * Portable.Exp(-ageSeconds / SettlingSeconds)));
    }

    /// <summary>Dry air in a cubic metre of the air outside, kg.</summary>
    public double DryAirKgPerM3 => _dryInKgPerM3;

    /// <summary>The rates of a cell of a volume, m³, whose air takes a path, m, while the blower draws dry air through it, kg/s.</summary>
    public CellRates Of(in Cell cell, double volumeM3, double pathM, double blownKgPerS = 0) =>
        Blown(cell, volumeM3, pathM, blownKgPerS).Rates;

    /// <summary>The same, and what the blower's share of the gas carries out beyond what it brought in, W.</summary>
    public (CellRates Rates, double ThroughW) Blown(in Cell cell, double volumeM3, double pathM, double blownKgPerS)
    {
        double t = cell.Celsius;
        double kelvin = t + 273.15;
        double dry = cell.FastKg + cell.SlowKg + cell.InertKg;
        double moisture = cell.WaterKg / (cell.WaterKg + dry);
        double vapourPa = SaturationPa(t) * Math.Min(1, moisture / 0.25);
        double insideKgPerM3 = ((PressurePa - vapourPa) / (DryAirGasConstant * kelvin)) + (vapourPa / (VapourGasConstant * kelvin));
        double airKg = volumeM3 / build.HeightM * _dryInKgPerM3
            * HeapAir.DraughtMPerS(_permeabilityM2, build.HeightM, pathM, _outsideKgPerM3, insideKgPerM3);
        airKg += blownKgPerS;
        double gas = Math.Max(0, 1 - (((dry / Stuff.SolidsKgPerM3) + (cell.WaterKg * 0.001)) / volumeM3));
        double slowdown = Microbes.Moisture(moisture) * Microbes.FreeAirSpace(gas);
        double warm = Microbes.Thermophilic.At(t);
        double mild = Microbes.Mesophilic.At(t);
        double fast = cell.FastKg * FastPerSecond * slowdown * Math.Min(1, warm + (FastMesophilic * mild));
        double slow = cell.SlowKg * SlowPerSecond * slowdown * Math.Min(1, warm + (SlowMesophilic * mild));
        double demand = Stuff.OxygenPerSolids * (fast + slow);
        double share = demand > 0 ? HeapAir.TakenKgPerS(demand, Stuff.OxygenInAir * airKg) / demand : 0;
        double burnt = share * (fast + slow);
        double gasOut = airKg + ((Stuff.CarbonDioxidePerSolids - Stuff.OxygenPerSolids) * burnt);
        double vapourOut = Math.Min(
            gasOut * 0.621945 * vapourPa / (PressurePa - vapourPa), (0.5 * cell.WaterKg / StepSeconds) + (airKg * _ratioIn));
        double outW = (gasOut * Stuff.GasJPerKgK * t) + (vapourOut * (Stuff.VapourJPerKg + (Stuff.VapourJPerKgK * t)));
        CellRates rates = new(
            (Stuff.HeatPerSolids * burnt) + (airKg * _enthalpyIn) - outW, -share * fast, -share * slow,
            (Stuff.WaterPerSolids * burnt) + (airKg * _ratioIn) - vapourOut);
        return (rates, airKg > 0 ? (outW - (airKg * _enthalpyIn)) * blownKgPerS / airKg : 0);
    }

    private static double SaturationPa(double celsius) => MoistAir.SaturationPressureFastPa(Math.Clamp(celsius, -40, 95));
}
