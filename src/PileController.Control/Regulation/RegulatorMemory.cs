namespace PileController.Control.Regulation;

/// <summary>What the regulators remember.</summary>
/// <param name="PumpDuty">Duty the pump was told, 0 to 1.</param>
/// <param name="BlowerDuty">Duty the blower was told, 0 to 1.</param>
/// <param name="PumpSinceMilliseconds">Since when the pump runs or rests, monotonic.</param>
/// <param name="BlowerSinceMilliseconds">Since when the blower runs or rests, monotonic.</param>
/// <param name="WaterCreditJoules">Granted to the water and not yet drawn, J.</param>
/// <param name="DrawWatts">Metered water draw, smoothed over the loop's dead time, W.</param>
/// <param name="ThermostatOn">Baselines: the house thermostat calls for heat.</param>
/// <param name="CutOut">Baselines: the cut-out at the turns is open.</param>
public readonly record struct RegulatorMemory(
    double PumpDuty, double BlowerDuty, long PumpSinceMilliseconds, long BlowerSinceMilliseconds,
    double WaterCreditJoules, double DrawWatts, bool ThermostatOn, bool CutOut);
