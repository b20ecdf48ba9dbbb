namespace PileController.Physics.Hydraulics;

/// <summary>Conversions between flow and speed, pressure and head.</summary>
public static class Flow
{
    /// <summary>Standard acceleration of free fall, m/s².</summary>
    public const double GravityMPerS2 = 9.80665;

    /// <summary>Mean speed in a round bore, m/s.</summary>
    /// <param name="flowLitresPerMinute">Flow, L/min.</param>
    /// <param name="innerDiameterM">Bore, m, above 0.</param>
    public static double VelocityMPerS(double flowLitresPerMinute, double innerDiameterM)
    {
        Require.Positive(innerDiameterM, "m");
        return flowLitresPerMinute / 60_000 / (Math.PI / 4 * innerDiameterM * innerDiameterM);
    }

    /// <summary>Height of a column of liquid with a pressure at its foot, m.</summary>
    /// <param name="pressurePa">Pressure, Pa.</param>
    /// <param name="densityKgPerM3">Density, kg/m³, above 0.</param>
    public static double HeadM(double pressurePa, double densityKgPerM3)
    {
        Require.Positive(densityKgPerM3, "kg/m³");
        return pressurePa / (densityKgPerM3 * GravityMPerS2);
    }

    /// <summary>Pressure at the foot of a column of liquid, Pa.</summary>
    /// <param name="headM">Height, m.</param>
    /// <param name="densityKgPerM3">Density, kg/m³.</param>
    public static double PressurePa(double headM, double densityKgPerM3) => headM * densityKgPerM3 * GravityMPerS2;
}
