namespace PileController.Physics.Sky;

/// <summary>How far average air lifts the sun.</summary>
internal static class Refraction
{
    /// <summary>Lift, degrees, by Bennett's formula as turned round by Saemundsson (Meeus, chapter 16; from memory); faded out below −1°.</summary>
    public static double Degrees(double trueElevationDegrees)
    {
        double elevation = Math.Max(trueElevationDegrees, -1);
        double lift = 1.02 / 60 / Portable.Tan(Angle.Radians(elevation + (10.3 / (elevation + 5.11))));
        double fade = Math.Clamp(2 + trueElevationDegrees, 0, 1);
        return Math.Max(0, lift) * fade;
    }
}
