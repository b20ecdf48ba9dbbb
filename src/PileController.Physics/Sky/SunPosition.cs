namespace PileController.Physics.Sky;

/// <summary>Where the sun stands for someone at a place.</summary>
/// <param name="ElevationDegrees">Above the horizon, without refraction, degrees.</param>
/// <param name="ApparentElevationDegrees">Above the horizon as seen through average air, degrees.</param>
/// <param name="AzimuthDegrees">Clockwise from north, 0 to 360 degrees.</param>
/// <param name="EquationOfTimeMinutes">Sundial time less mean time, min.</param>
/// <param name="DistanceAu">Distance of the sun, astronomical units.</param>
public readonly record struct SunPosition(
    double ElevationDegrees, double ApparentElevationDegrees, double AzimuthDegrees, double EquationOfTimeMinutes, double DistanceAu);
