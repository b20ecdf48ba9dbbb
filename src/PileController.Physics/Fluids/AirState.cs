namespace PileController.Physics.Fluids;

/// <summary>Properties of moist air at one temperature, humidity and pressure.</summary>
/// <param name="SaturationPressurePa">Pressure of the vapour were the air saturated, Pa.</param>
/// <param name="HumidityRatioKgPerKg">Vapour per dry air, kg/kg.</param>
/// <param name="EnthalpyJPerKgDryAir">Enthalpy per kg of dry air, J/kg.</param>
/// <param name="SpecificVolumeM3PerKg">Volume per kg of dry air, m³/kg.</param>
/// <param name="DewPointC">Dew (or frost) point, °C.</param>
/// <param name="WetBulbC">Thermodynamic wet bulb, °C.</param>
public readonly record struct AirState(
    double SaturationPressurePa,
    double HumidityRatioKgPerKg,
    double EnthalpyJPerKgDryAir,
    double SpecificVolumeM3PerKg,
    double DewPointC,
    double WetBulbC);
