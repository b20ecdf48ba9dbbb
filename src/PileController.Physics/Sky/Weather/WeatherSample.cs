namespace PileController.Physics.Sky.Weather;

/// <summary>Weather at one instant.</summary>
/// <param name="OutsideC">Air, °C.</param>
/// <param name="SunWPerM2">Sun on level ground, W/m².</param>
/// <param name="WindMPerS">Wind, m/s.</param>
/// <param name="Humidity">Relative humidity, fraction 0 to 1.</param>
/// <param name="PressurePa">Pressure, Pa.</param>
public readonly record struct WeatherSample(double OutsideC, double SunWPerM2, double WindMPerS, double Humidity, double PressurePa);
