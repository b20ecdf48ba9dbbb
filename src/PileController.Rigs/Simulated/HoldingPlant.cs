using PileController.Control.Readings;
using PileController.Physics.Plants;

namespace PileController.Rigs.Simulated;

/// <summary>Heap, house, loop, weather and battery of a holding, as the simulated rig's far side.</summary>
/// <param name="plant">The plant.</param>
public sealed class HoldingPlant(Plant plant) : IPlant
{
    /// <summary>The plant behind it.</summary>
    public Plant Plant => plant;

    /// <inheritdoc/>
    public void Advance(in ActuatorState actuators, double seconds) => plant.Step(
        new PlantInputs(
            actuators.PumpDuty, actuators.ValveOpening, actuators.BlowerDuty, actuators.BackupOn, actuators.FlowShareLost),
        seconds);

    /// <inheritdoc/>
    public double TrueValue(ProbeFit probe) => probe.Channel switch
    {
        Channel.HeapCore or Channel.HeapMiddle or Channel.HeapEdge => plant.Heap.AtRadiusC(probe.RadiusM),
        Channel.HeapTurns => plant.Heap.NearTurnsC,
        Channel.Supply => plant.SupplyC,
        Channel.Return => plant.ReturnC,
        Channel.House => plant.HouseC,
        Channel.Floor => plant.FloorC,
        Channel.Tank => plant.TankC,
        Channel.Outside => plant.Sky.OutsideC,
        Channel.DuctAir => plant.DuctAirC,
        Channel.Sun => plant.Sky.SunWPerM2,
        Channel.Flow => plant.FlowLitresPerMinute,
        Channel.PumpPower => plant.PumpW,
        Channel.BlowerPower => plant.BlowerW,
        Channel.Battery => plant.BatteryV,
        Channel.Leak => 0,
        Channel.Humidity => plant.HouseHumidityPercent,
        Channel.CarbonDioxide => plant.HouseCarbonDioxidePpm,

        // Where the demo's grower put them: in the drum, in the coldest line, in a bed (half way from air to floor), and in
        // a cold frame (half way from house to outside).
        Channel.SpareOne => plant.Heap.HasDrum ? plant.Heap.DrumC : plant.Heap.NearTurnsC,
        Channel.SpareTwo => plant.ColdestLineC,
        Channel.SpareThree => 0.5 * (plant.HouseC + plant.FloorC),
        Channel.SpareFour => 0.5 * (plant.HouseC + plant.Sky.OutsideC),
        _ => 1,
    };
}
