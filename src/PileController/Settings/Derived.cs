using System.Globalization;
using PileController.Control;
using PileController.Physics.Houses;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;
using PileController.Rigs;

namespace PileController.Settings;

/// <summary>What the controller is told of heap, house and loop without anybody setting it: it follows from how they are built.</summary>
internal static class Derived
{
    // The least that stands in a loop without a tank, L (common practice, no source).
    private const double LeastTankLitres = 20;
    private const double WaterJPerL = 0.998 * 4186;

    /// <summary>The control settings with all that follows from the rest.</summary>
    public static ControlSettings Of(PileSettings settings) => settings.Control with
    {
        Places = ProbePlaces.Of(settings),
        LatitudeDegrees = settings.Site.LatitudeDegrees,
        MovingDuty = PumpDuty.Moving(settings),
        Loop = LoopCurving.Of(settings),
        House = House(settings.House, settings.Loop),
        HeapHeightM = settings.Heap.HeightM,
        DrumLitres = settings.Heap.DrumLitres,
        CoilRadiusM = settings.Heap.Coil.RadiusM,
        DuctRadiusM = settings.Heap.Duct.RadiusM,
        DuctWPerK = Told(DuctBed.ConductanceWPerK(settings.Heap.Duct)),
    };

    /// <summary>How the motor valve moves; one rule for the simulated valve and the real one.</summary>
    public static ValveMotion Motion(PileSettings settings) => new(settings.Loop.ValveTravelSeconds, settings.Control.ValveFeedback);

    private static HouseTold House(HouseBuild house, LoopBuild loop) => new()
    {
        AirJPerK = Told(house.AirNodeJPerM2K * house.FloorAreaM2),
        FloorJPerK = Told(house.FloorJPerM2K * house.FloorAreaM2),
        FloorWPerK = Told(house.FloorUWPerM2K * house.FloorAreaM2),
        GroundWPerK = Told(house.GroundUWPerM2K * house.FloorAreaM2),
        GroundC = house.GroundC,
        PipeWPerK = Told(loop.HousePipeM * loop.HousePipeWPerMK),
        TankWPerK = loop.TankLossWPerK,
        TankJPerK = Told(Math.Max(LeastTankLitres, loop.TankLitres) * WaterJPerL),
        SunM2 = Told(house.SolarGain * house.FloorAreaM2),
        CurtainWPerK = Told(house.CurtainSaving * house.GlazingAreaM2 * house.GlazingUWPerM2K),
        VentAboveC = house.VentAboveC,
    };

    // A figure that is told has three digits.
    private static double Told(double figure) => double.Parse(figure.ToString("G3", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
