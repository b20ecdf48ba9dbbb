using PileController.Physics.Houses;

namespace PileController.Physics.Plants;

/// <summary>The greenhouse: one node for air, plants and benches, one for the soil that follows the day.</summary>
internal sealed class Dwelling(HouseBuild build, DwellingState state, DwellingLedger ledger)
{
    // Share of the sun that warms air and plants at once; the rest is taken up by the floor.
    private const double SunToAir = 0.4;

    // Vents open in proportion to the excess, W/K per K (common practice, no source).
    private const double VentWPerKPerK = 400;
    private const double VentMostWPerK = 4000;

    private readonly double _airJPerK = build.AirNodeJPerM2K * build.FloorAreaM2;
    private readonly double _floorJPerK = build.FloorJPerM2K * build.FloorAreaM2;
    private readonly double _floorWPerK = build.FloorUWPerM2K * build.FloorAreaM2;
    private readonly double _groundWPerK = build.GroundUWPerM2K * build.FloorAreaM2;
    private readonly double _openWPerK = build.LossWPerK;
    private readonly double _curtainedWPerK =
        build.LossWPerK - (build.CurtainSaving * build.GlazingAreaM2 * build.GlazingUWPerM2K);

    private double _airC = state.AirC;
    private double _floorC = state.FloorC;
    private DwellingLedger _ledger = ledger;

    /// <summary>Temperature at which a holding is begun, °C: that of the air outside, but no frost.</summary>
    public static double FreshC(double outsideC) => Math.Max(5, outsideC);

    /// <summary>A house just taken into use.</summary>
    public static DwellingState Fresh(HouseBuild build, double airC) => new(airC, Math.Max(airC, build.GroundC));

    /// <summary>What the vents let out at a temperature, W/K.</summary>
    public static double VentWPerK(HouseBuild build, double airC) =>
        Math.Clamp(VentWPerKPerK * (airC - build.VentAboveC), 0, VentMostWPerK);

    public double AirC => _airC;

    public double FloorC => _floorC;

    public DwellingLedger Ledger => _ledger;

    public double StoredJ => (_airC * _airJPerK) + (_floorC * _floorJPerK);

    public DwellingState Snapshot() => new(_airC, _floorC);

    public void Step(double seconds, double heatJ, double outsideC, double sunWPerM2)
    {
        double sunJ = seconds * sunWPerM2 * build.SolarGain * build.FloorAreaM2;
        double shell = seconds * (sunWPerM2 > 1 ? _openWPerK : _curtainedWPerK);
        double vent = seconds * VentWPerK(build, _airC);
        double floor = seconds * _floorWPerK;
        double ground = seconds * _groundWPerK;

        // Air and floor each take a backward step in turn, so that a light house in a gale of vents does not ring.
        double airC = ((_airJPerK * _airC) + (SunToAir * sunJ) + heatJ + ((shell + vent) * outsideC) + (floor * _floorC))
            / (_airJPerK + shell + vent + floor);
        double toFloorJ = floor * (airC - _floorC);
        double floorC = ((_floorJPerK * _floorC) + ((1 - SunToAir) * sunJ) + toFloorJ + (ground * build.GroundC))
            / (_floorJPerK + ground);
        double lossJ = shell * (airC - outsideC);
        double ventJ = vent * (airC - outsideC);
        double groundJ = ground * (floorC - build.GroundC);
        _airC = airC;
        _floorC = floorC;
        _ledger.SunJ += sunJ;
        _ledger.HeatJ += heatJ;
        _ledger.LossJ += lossJ;
        _ledger.VentJ += ventJ;
        _ledger.GroundJ += groundJ;
    }
}
