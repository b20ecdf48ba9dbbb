using PileController.Physics.Hydraulics;
using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>Figures of pipes for people, in both systems.</summary>
internal static class PipeText
{
    private const double HundredFeet = 100 * (double)Factors.Foot;

    public static string Velocity(double metresPerSecond) =>
        $"{metresPerSecond:F2} m/s ({metresPerSecond / (double)Factors.Foot:F2} ft/s)";

    public static string Pressure(double pascals) => $"{pascals / 1000:F2} kPa ({pascals / Customary.Psi:F3} psi)";

    /// <summary>Pounds per square inch lost on a hundred feet.</summary>
    public static double PsiPer100Feet(double pascals, double lengthM) => pascals / Customary.Psi * HundredFeet / lengthM;

    /// <summary>Whether the flow carries bubbles along, and which does.</summary>
    public static string Purge(double velocityMPerS, double innerDiameterM)
    {
        double least = AirPurge.LeastFlowLitresPerMinute(innerDiameterM);
        return $"{(AirPurge.Purges(velocityMPerS) ? "yes" : "no")}; {Show.Both(s => Show.WaterFlow(least, s))} or more carries bubbles down this bore "
            + "(2 ft/s, common practice, no source)";
    }
}
