namespace PileController.Control.Regulation;

/// <summary>What the regulators remember.</summary>
/// <param name="PumpDuty">Duty the pump was told, 0 to 1.</param>
/// <param name="BlowerDuty">Duty the blower was told, 0 to 1.</param>
/// <param name="PumpSinceMilliseconds">Since when the pump runs or rests, monotonic.</param>
/// <param name="BlowerSinceMilliseconds">Since when the blower runs or rests, monotonic.</param>
/// <param name="WaterCreditJoules">Granted to the water and not yet drawn, J.</param>
/// <param name="ThermostatOn">Baselines: the house thermostat calls for heat.</param>
/// <param name="CutOut">Baselines: the cut-out at the turns is open.</param>
/// <param name="ValveOpening">Opening the valve was told, 0 to 1.</param>
/// <param name="PumpStarts">Starts of the pump for a draw that have not worn off, 12 at most.</param>
/// <param name="WaterYieldWatts">Heat that a flow of 1 L/min carries, smoothed, W; 0 before any was metered.</param>
/// <param name="FlowExcess">How much more flows than the loop's curve says, as a share of it (learned; -1 to 2).</param>
/// <param name="AirCreditJoules">Granted to the air and not yet drawn, J.</param>
/// <param name="BlowerStarts">Starts of the blower that have not worn off, 12 at most.</param>
/// <param name="AirYieldWatts">Heat that the air carries at full duty, smoothed, W; 0 before any was metered.</param>
public readonly record struct RegulatorMemory(
    double PumpDuty, double BlowerDuty, long PumpSinceMilliseconds, long BlowerSinceMilliseconds,
    double WaterCreditJoules, bool ThermostatOn, bool CutOut, double ValveOpening, double PumpStarts, double WaterYieldWatts,
    double FlowExcess, double AirCreditJoules, double BlowerStarts, double AirYieldWatts);
