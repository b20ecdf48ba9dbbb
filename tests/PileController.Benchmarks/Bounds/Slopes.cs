namespace PileController.Benchmarks.Bounds;

/// <summary>How a cell's rates change with its heat, solids and water, by one-sided differences.</summary>
internal readonly record struct Slopes(CellRates Heat, CellRates Fast, CellRates Slow, CellRates Water)
{
    private const double StepK = 0.05;
    private const double StepKg = 0.01;

    // A cell that has all but dried out gives up its last water within a minute; prices walk by ten.
    private const double MostPerS = 1.0 / 1800;

    public static Slopes Of(CellLife life, in Cell cell, double volumeM3, double pathM, double blownKgPerS)
    {
        CellRates at = life.Of(cell, volumeM3, pathM, blownKgPerS);
        double heat = StepK * cell.JPerK;
        return new Slopes(
            life.Of(cell with { HeatJ = cell.HeatJ + heat }, volumeM3, pathM, blownKgPerS).Less(at, heat),
            life.Of(cell with { FastKg = cell.FastKg + StepKg }, volumeM3, pathM, blownKgPerS).Less(at, StepKg),
            life.Of(cell with { SlowKg = cell.SlowKg + StepKg }, volumeM3, pathM, blownKgPerS).Less(at, StepKg),
            Tamed(life.Of(cell with { WaterKg = cell.WaterKg + StepKg }, volumeM3, pathM, blownKgPerS).Less(at, StepKg)));
    }

    private static CellRates Tamed(in CellRates water)
    {
        double share = Math.Min(1, MostPerS / Math.Max(MostPerS, -water.WaterKgPerS));
        return new CellRates(
            share * water.HeatW, share * water.FastKgPerS, share * water.SlowKgPerS, share * water.WaterKgPerS);
    }
}
