using PileController.Control.Decisions;

namespace PileController.Control.Allocation;

/// <summary>What is wanted, borne and allowed in one tick.</summary>
/// <param name="WantW">Wanted, W.</param>
/// <param name="MeansW">Borne, W.</param>
/// <param name="WaterW">Allowed to the water, W.</param>
/// <param name="AirW">Allowed to the air, W.</param>
/// <param name="AirReachW">What the ducts could give at full duty, W.</param>
/// <param name="Curb">What limits it.</param>
/// <param name="SetPointC">The house set point now, °C.</param>
/// <param name="OnOff">True for baselines, which know only full and off.</param>
/// <param name="ThermostatOn">Baselines: the house thermostat.</param>
/// <param name="CutOut">Baselines: the cut-out.</param>
/// <param name="FloorNear">The heap is at its floor.</param>
/// <param name="Recovered">The heap can bear a draw again.</param>
/// <param name="Urgent">The house stands at its minimum.</param>
internal readonly record struct Grant(
    double WantW, double MeansW, double WaterW, double AirW, double AirReachW, Curb Curb, double SetPointC, bool OnOff,
    bool ThermostatOn, bool CutOut, bool FloorNear, bool Recovered, bool Urgent)
{
    public double TotalW => WaterW + AirW;
}
