namespace PileController.Physics.Sky;

/// <summary>
/// Rise, noon and set of one day in local standard time. Where the clock is far from the sun (an offset that does not
/// fit the longitude) rise or set may belong to the date before or after; the solar noon is always of the date asked for.
/// </summary>
/// <param name="Sunrise">Upper edge of the sun on a level horizon; null when it does not rise, or does not set.</param>
/// <param name="SolarNoon">Sun due south or north.</param>
/// <param name="Sunset">As sunrise.</param>
/// <param name="NoonElevationDegrees">Height at solar noon, without refraction, degrees; below 0 in polar night.</param>
public readonly record struct SunDay(TimeOnly? Sunrise, TimeOnly SolarNoon, TimeOnly? Sunset, double NoonElevationDegrees);
