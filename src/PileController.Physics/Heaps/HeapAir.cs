namespace PileController.Physics.Heaps;

/// <summary>Air through the heap: how much moves, and how much of its oxygen the microbes get.</summary>
public static class HeapAir
{
    private const double GravityMPerS2 = 9.80665;
    private const double AirPaS = 1.85e-5;

    // Half saturation of 2 % by volume (Haug 1993) against 20.95 % in fresh air.
    private const double HalfSaturation = 2 / 20.95;

    /// <summary>
    /// Speed of the air through a column, m/s: the draught of the weight difference inside and outside over the
    /// resistance of the path (Darcy). The air comes in at the foot, passes under the outer columns and rises.
    /// </summary>
    /// <param name="permeabilityM2">Permeability, m².</param>
    /// <param name="heightM">Height of the column, m.</param>
    /// <param name="pathM">Length of the whole path, m.</param>
    /// <param name="outsideKgPerM3">Density of the air outside.</param>
    /// <param name="insideKgPerM3">Density of the moist gas inside.</param>
    public static double DraughtMPerS(
        double permeabilityM2, double heightM, double pathM, double outsideKgPerM3, double insideKgPerM3) =>
        permeabilityM2 / AirPaS * GravityMPerS2 * Math.Abs(outsideKgPerM3 - insideKgPerM3) * heightM / pathM;

    /// <summary>
    /// Oxygen the microbes take from a stream, kg/s: what they would take with plenty, slowed by Haug's oxygen factor
    /// at the concentration with which the air leaves. Never more than the stream carries: it is the root of
    /// S·(1−x)·(x+κ) = D·x, x being the share of the oxygen that leaves unused.
    /// </summary>
    /// <param name="demandKgPerS">Demand with plenty of oxygen, kg/s.</param>
    /// <param name="supplyKgPerS">Oxygen carried in, kg/s.</param>
    public static double TakenKgPerS(double demandKgPerS, double supplyKgPerS)
    {
        if (supplyKgPerS <= 0 || demandKgPerS <= 0)
        {
            return 0;
        }

        double half = 0.5 * (demandKgPerS - (supplyKgPerS * (1 - HalfSaturation)));
        double root = Math.Sqrt((half * half) + (supplyKgPerS * supplyKgPerS * HalfSaturation));
        // Both forms are the same root; each is used where it does not cancel.
        double left = half > 0 ? supplyKgPerS * supplyKgPerS * HalfSaturation / (root + half) : root - half;

        // Not supply less what is left: in a gale the two are all but the same.
        return Math.Min(supplyKgPerS, demandKgPerS * left / (left + (supplyKgPerS * HalfSaturation)));
    }
}
