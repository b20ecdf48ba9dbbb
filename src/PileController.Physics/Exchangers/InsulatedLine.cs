using PileController.Physics.Fluids;

namespace PileController.Physics.Exchangers;

/// <summary>A water pipe in insulation, outdoors or in a trench.</summary>
/// <param name="InnerDiameterM">Bore, m.</param>
/// <param name="OuterDiameterM">Outside of the pipe, m.</param>
/// <param name="WallWPerMK">Conductivity of the pipe wall, W/(m·K).</param>
/// <param name="InsulationM">Thickness of the insulation, m, 0 for none.</param>
/// <param name="InsulationWPerMK">Conductivity of the insulation, W/(m·K).</param>
/// <param name="SurfaceWPerM2K">Film coefficient of the outer surface (wind and radiation), W/(m²·K); about 10 sheltered, 25 in wind (common practice, no source).</param>
public sealed record InsulatedLine(
    double InnerDiameterM, double OuterDiameterM, double WallWPerMK, double InsulationM, double InsulationWPerMK, double SurfaceWPerM2K)
{
    /// <summary>Heat capacity of the pipe wall, J/(m³·K); the default is cross-linked polyethylene (940 kg/m³ × 2300 J/(kg·K), from memory).</summary>
    public double WallJPerM3K { get; init; } = 2.16e6;

    /// <summary>Ground the line lies in, null for a line in the open, whose surface film then counts.</summary>
    public Ground? Buried { get; init; }

    /// <summary>Resistance from the bore to the air (or the ground's surface) outside, m·K/W; the water's own film is left out as small.</summary>
    public double ResistanceMKPerW =>
        Surroundings.LayerMKPerW(InnerDiameterM, OuterDiameterM, WallWPerMK)
        + Surroundings.LayerMKPerW(OuterDiameterM, SurfaceM, InsulationWPerMK)
        + OutsideMKPerW;

    private double SurfaceM => OuterDiameterM + (2 * InsulationM);

    private double OutsideMKPerW => Buried is { } ground
        ? Surroundings.BuriedMKPerW(SurfaceM, ground.DepthM, ground.ConductivityWPerMK)
        : Surroundings.FilmMKPerW(SurfaceM, SurfaceWPerM2K);

    /// <summary>Heat lost, W per metre of line.</summary>
    /// <param name="waterC">Water, °C.</param>
    /// <param name="outsideC">Air or ground outside, °C.</param>
    public double LossWPerM(double waterC, double outsideC) => (waterC - outsideC) / ResistanceMKPerW;

    /// <summary>Temperature of the outer surface, °C.</summary>
    /// <param name="waterC">Water, °C.</param>
    /// <param name="outsideC">Air or ground outside, °C.</param>
    public double SurfaceC(double waterC, double outsideC) => outsideC + (LossWPerM(waterC, outsideC) * OutsideMKPerW);

    /// <summary>Time for still water to reach 0 °C, s: 0 when it is there already, infinity when the outside is not below 0 °C.</summary>
    /// <param name="waterC">Water when the flow stopped, °C, at most 95.</param>
    /// <param name="outsideC">Air or ground outside, °C.</param>
    public double SecondsToFreezing(double waterC, double outsideC)
    {
        if (waterC <= 0)
        {
            return 0;
        }

        double boreM2 = Math.PI / 4 * InnerDiameterM * InnerDiameterM;
        double wallM2 = (Math.PI / 4 * OuterDiameterM * OuterDiameterM) - boreM2;
        double middleC = waterC / 2;
        double capacityJPerMK = (boreM2 * Water.DensityKgPerM3(middleC) * Water.SpecificHeatJPerKgK(middleC)) + (wallM2 * WallJPerM3K);
        return new LumpedTank(capacityJPerMK, 1 / ResistanceMKPerW).SecondsToReach(waterC, 0, outsideC);
    }
}
