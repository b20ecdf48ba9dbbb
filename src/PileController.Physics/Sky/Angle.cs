namespace PileController.Physics.Sky;

/// <summary>Degrees and radians.</summary>
internal static class Angle
{
    public static double Radians(double degrees) => degrees * (Math.PI / 180);

    public static double Degrees(double radians) => radians * (180 / Math.PI);
}
