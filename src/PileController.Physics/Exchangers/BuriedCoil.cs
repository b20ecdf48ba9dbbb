using PileController.Physics.Fluids;
using PileController.Physics.Hydraulics;

namespace PileController.Physics.Exchangers;

/// <summary>
/// Turns of pipe buried in a warm bed: film, wall and bed in series. The bed's part grows as the bed round the pipe cools
/// (line source), so the same coil gives less the longer it is drawn from. Turns are taken as far apart and the bed as wide:
/// turns that share a bed, or a bed that is used up, give less.
/// </summary>
/// <param name="Pipe">The pipe.</param>
/// <param name="LengthM">Length buried, m, above 0.</param>
/// <param name="BedWPerMK">Conductivity of the bed, W/(m·K), above 0.</param>
/// <param name="BedJPerM3K">Heat capacity of the bed, J/(m³·K), above 0.</param>
public sealed record BuriedCoil(
    PipeSize Pipe, double LengthM, double BedWPerMK = BuriedCoil.MoistChipsWPerMK, double BedJPerM3K = BuriedCoil.MoistChipsJPerM3K)
{
    /// <summary>Conductivity of a bed of moist chips, W/(m·K) (common practice, no source).</summary>
    public const double MoistChipsWPerMK = 0.4;

    /// <summary>Heat capacity of a bed of moist chips, J/(m³·K) (common practice, no source).</summary>
    public const double MoistChipsJPerM3K = 2.5e6;

    private const int MeanTurns = 4;

    /// <summary>From when on <see cref="After"/> stands, s: earlier the pipe's own width counts, and a line source promises too much.</summary>
    public double FromSeconds => Surroundings.LineSourceFromSeconds(Pipe.OuterDiameterM / 2, BedWPerMK, BedJPerM3K);

    /// <summary>How far into the bed the cold of a steady draw has spread, m: √(4at). Turns nearer together than that share a bed.</summary>
    /// <param name="seconds">Since the draw began, s, 0 or more.</param>
    public double ReachM(double seconds)
    {
        Require.NotNegative(seconds, "s");
        return Math.Sqrt(4 * BedWPerMK / BedJPerM3K * seconds);
    }

    /// <summary>What a steady flow draws after some time of it.</summary>
    /// <param name="flowLitresPerMinute">Flow as metered at the inlet, L/min, above 0.</param>
    /// <param name="inletC">Water at the inlet, °C, 0 to 95.</param>
    /// <param name="heapC">Bed far from the pipe, °C, 0 to 95.</param>
    /// <param name="seconds">Since the draw began, s, <see cref="FromSeconds"/> or more.</param>
    public CoilDraw After(double flowLitresPerMinute, double inletC, double heapC, double seconds)
    {
        Require.Positive(flowLitresPerMinute, "L/min");
        Require.Positive(LengthM, "m");
        Require.Within(heapC, Water.LowestC, Water.HighestC, "°C");
        double massFlow = Water.MassFlowKgPerS(flowLitresPerMinute, inletC);
        double wall = Surroundings.LayerMKPerW(Pipe.InnerDiameterM, Pipe.OuterDiameterM, Pipe.WallWPerMK);
        double bed = 1 / Surroundings.LineSourceWPerMK(Pipe.OuterDiameterM / 2, BedWPerMK, BedJPerM3K, seconds);
        CoilDraw draw = default;
        double outletC = inletC;

        // Film and specific heat are those of the mean water, which is known only afterwards; it settles at once.
        for (int turn = 0; turn < MeanTurns; turn++)
        {
            double meanC = 0.5 * (inletC + outletC);
            double capacityRate = massFlow * Water.SpecificHeatJPerKgK(meanC);
            double film = Surroundings.FilmMKPerW(
                Pipe.InnerDiameterM, TubeFilm.WaterWPerM2K(flowLitresPerMinute, Pipe.InnerDiameterM, meanC));
            double units = LengthM / (film + wall + bed) / capacityRate;

            // Of a very long coil the rounding alone would take the water past the bed.
            outletC = Math.Clamp(
                inletC + (Effectiveness.OneSideIsothermal(units) * (heapC - inletC)), Math.Min(inletC, heapC), Math.Max(inletC, heapC));
            draw = new CoilDraw(outletC, capacityRate * (outletC - inletC), Effectiveness.OneSideIsothermal(units), units, film, wall, bed);
        }

        return draw;
    }
}
