using PileController.Physics.Fluids;

namespace PileController.Physics.Exchangers;

/// <summary>Heat transfer between a wall and the fluid inside a round tube.</summary>
public static class TubeFilm
{
    /// <summary>Nusselt number of fully developed laminar flow in a tube whose wall has one temperature.</summary>
    public const double LaminarNusselt = 3.66;

    /// <summary>Reynolds number up to which the flow counts as laminar.</summary>
    public const double LaminarUpTo = 2300;

    /// <summary>Reynolds number from which Gnielinski's correlation stands alone.</summary>
    public const double TurbulentFrom = 3000;

    /// <summary>Nusselt number by Gnielinski's correlation (1976), for Reynolds numbers from 3000 to 5e6.</summary>
    /// <param name="reynolds">Reynolds number, above 1000.</param>
    /// <param name="prandtl">Prandtl number, 0.5 to 2000.</param>
    /// <param name="friction">Darcy friction factor.</param>
    public static double GnielinskiNusselt(double reynolds, double prandtl, double friction)
    {
        double eighth = friction / 8;
        return eighth * (reynolds - 1000) * prandtl / (1 + (12.7 * Math.Sqrt(eighth) * (Portable.Pow(prandtl, 2.0 / 3) - 1)));
    }

    /// <summary>
    /// Nusselt number of a smooth tube at any flow: 3.66 in laminar flow, Gnielinski with Petukhov's friction factor from
    /// <see cref="TurbulentFrom"/> on, and between the two a smooth step (common practice, no source), since the truth there
    /// depends on how the flow enters.
    /// </summary>
    /// <param name="reynolds">Reynolds number, 0 or more.</param>
    /// <param name="prandtl">Prandtl number, 0.5 to 2000.</param>
    public static double Nusselt(double reynolds, double prandtl)
    {
        Require.NotNegative(reynolds, "(Reynolds)");
        Require.Within(prandtl, 0.5, 2000, "(Prandtl)");
        if (reynolds <= LaminarUpTo)
        {
            return LaminarNusselt;
        }

        double petukhov = (0.79 * Portable.Log(reynolds)) - 1.64;
        double turbulent = GnielinskiNusselt(reynolds, prandtl, 1 / (petukhov * petukhov));
        double share = Math.Min(1, (reynolds - LaminarUpTo) / (TurbulentFrom - LaminarUpTo));
        double weight = share * share * (3 - (2 * share));
        return LaminarNusselt + (weight * (turbulent - LaminarNusselt));
    }

    /// <summary>Film coefficient of water in a pipe, W/(m²·K).</summary>
    /// <param name="flowLitresPerMinute">Flow, L/min, 0 or more.</param>
    /// <param name="innerDiameterM">Bore, m.</param>
    /// <param name="waterC">Water, °C, 0 to 95.</param>
    public static double WaterWPerM2K(double flowLitresPerMinute, double innerDiameterM, double waterC)
    {
        Require.NotNegative(flowLitresPerMinute, "L/min");
        Require.Positive(innerDiameterM, "m");
        double massFlow = Water.MassFlowKgPerS(flowLitresPerMinute, waterC);
        double reynolds = 4 * massFlow / (Math.PI * innerDiameterM * Water.ViscosityPaS(waterC));
        return Nusselt(reynolds, Water.Prandtl(waterC)) * Water.ConductivityWPerMK(waterC) / innerDiameterM;
    }

    /// <summary>Film coefficient of air in a duct, W/(m²·K).</summary>
    /// <param name="flowM3PerS">Flow, m³/s, 0 or more.</param>
    /// <param name="diameterM">Diameter, m.</param>
    /// <param name="airC">Air, °C, −60 to 150.</param>
    public static double AirWPerM2K(double flowM3PerS, double diameterM, double airC)
    {
        Require.NotNegative(flowM3PerS, "m³/s");
        Require.Positive(diameterM, "m");
        double reynolds = 4 * flowM3PerS * MoistAir.DensityKgPerM3(airC, 0) / (Math.PI * diameterM * DryAir.ViscosityPaS(airC));
        return Nusselt(reynolds, DryAir.Prandtl) * DryAir.ConductivityWPerMK(airC) / diameterM;
    }
}
