using PileController.Physics.Fluids;

namespace PileController.Physics.Hydraulics;

/// <summary>A straight run of round duct with air in it; bends, hoods and grilles are not counted.</summary>
/// <param name="LengthM">Length, m, 0 or more.</param>
/// <param name="DiameterM">Diameter, m, above 0.</param>
/// <param name="RoughnessM">Roughness of the wall, m; the default is galvanised sheet.</param>
public sealed record DuctRun(double LengthM, double DiameterM, double RoughnessM = DuctRun.GalvanisedM)
{
    /// <summary>Roughness of galvanised sheet duct, 0.15 mm (textbook value, from memory; 0.09 to 0.18 mm).</summary>
    public const double GalvanisedM = 0.15e-3;

    private double AreaM2 => Math.PI / 4 * DiameterM * DiameterM;

    /// <summary>Mean speed of a stream of air, m/s.</summary>
    /// <param name="massKgPerS">Air, kg/s, 0 or more.</param>
    /// <param name="airC">Air, °C, −60 to 150.</param>
    public double VelocityMPerS(double massKgPerS, double airC)
    {
        Require.NotNegative(massKgPerS, "kg/s");
        Require.Positive(DiameterM, "m");
        return massKgPerS / (MoistAir.DensityKgPerM3(airC, 0) * AreaM2);
    }

    /// <summary>Reynolds number of a stream of air.</summary>
    /// <param name="massKgPerS">Air, kg/s, 0 or more.</param>
    /// <param name="airC">Air, °C, −60 to 150.</param>
    public double Reynolds(double massKgPerS, double airC) =>
        4 * massKgPerS / (Math.PI * DiameterM * DryAir.ViscosityPaS(airC));

    /// <summary>Pressure lost to friction by Darcy and Weisbach with Churchill's factor, Pa.</summary>
    /// <param name="massKgPerS">Air, kg/s, 0 or more.</param>
    /// <param name="airC">Air, mean over the run, °C, −60 to 150.</param>
    public double LossPa(double massKgPerS, double airC)
    {
        double velocity = VelocityMPerS(massKgPerS, airC);
        if (velocity == 0)
        {
            return 0;
        }

        double friction = Friction.Churchill(Reynolds(massKgPerS, airC), RoughnessM / DiameterM);
        return friction * LengthM / DiameterM * MoistAir.DensityKgPerM3(airC, 0) / 2 * velocity * velocity;
    }

    /// <summary>Electric power a blower needs to drive a stream against that friction, W.</summary>
    /// <param name="massKgPerS">Air, kg/s, 0 or more.</param>
    /// <param name="airC">Air, mean over the run, °C, −60 to 150.</param>
    /// <param name="efficiency">Share of the electricity that becomes air power, above 0 to 1.</param>
    public double BlowerWatts(double massKgPerS, double airC, double efficiency)
    {
        Require.Positive(efficiency, "(share)");
        return LossPa(massKgPerS, airC) * VelocityMPerS(massKgPerS, airC) * AreaM2 / efficiency;
    }
}
