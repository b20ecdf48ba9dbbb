namespace PileController.Physics.Sky.Weather;

/// <summary>Where each quantity of a series comes from.</summary>
/// <param name="OutsideC">Of the temperature.</param>
/// <param name="SunWPerM2">Of the sun.</param>
/// <param name="WindMPerS">Of the wind.</param>
/// <param name="Humidity">Of the humidity.</param>
/// <param name="PressurePa">Of the pressure.</param>
public sealed record WeatherOrigins(
    WeatherOrigin OutsideC, WeatherOrigin SunWPerM2, WeatherOrigin WindMPerS, WeatherOrigin Humidity, WeatherOrigin PressurePa);
