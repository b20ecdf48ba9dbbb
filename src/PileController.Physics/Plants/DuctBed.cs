using PileController.Physics.Heaps;

namespace PileController.Physics.Plants;

/// <summary>What the bed gives the air in a closed duct. Plant and plan ask here alike.</summary>
public static class DuctBed
{
    /// <summary>Heat capacity of air, J/(m³·K): 1.2 kg/m³ × 1006 J/(kg·K).</summary>
    public const double AirJPerM3K = 1.2 * 1006;

    private const double FilmWPerM2K = 10;

    // Half the way to the next duct (common practice, no source).
    private const double ReachM = 0.3;
    private const double BedWPerMK = 0.35;

    /// <summary>What the bed gives a metre of duct of a diameter, W/(m·K).</summary>
    /// <param name="diameterM">Diameter, m, 0.05 to 0.5.</param>
    public static double BedWPerM(double diameterM) => 2 * Math.PI * BedWPerMK / Portable.Log(ReachM / (0.5 * diameterM));

    /// <summary>Conductance from the bed to the air of the whole duct, W/K; 0 without a duct or where the air runs through the heap.</summary>
    /// <param name="duct">The duct.</param>
    public static double ConductanceWPerK(DuctBuild duct)
    {
        if (duct.LengthM <= 0 || duct.ThroughHeap)
        {
            return 0;
        }

        double bed = Portable.Log(ReachM / (0.5 * duct.DiameterM)) / (2 * Math.PI * BedWPerMK * duct.LengthM);
        double film = 1 / (FilmWPerM2K * Math.PI * duct.DiameterM * duct.LengthM);
        return 1 / (bed + film);
    }
}
