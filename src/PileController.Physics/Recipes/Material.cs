namespace PileController.Physics.Recipes;

/// <summary>One material of a heap as it is delivered. Shares are of the dry mass unless they say otherwise.</summary>
public sealed record Material
{
    /// <summary>
    /// Share of carbon taken where none is given, 0.50 (from memory: about that of wood and straw).
    /// </summary>
    public const double UsualCarbon = 0.50;

    /// <summary>Share of ash taken where none is given, 0.05 (from memory: clean chips 0.01 to 0.03, manure 0.1 to 0.3).</summary>
    public const double UsualAsh = 0.05;

    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>Mass with its water, kg, above 0.</summary>
    public required double WetMassKg { get; init; }

    /// <summary>Share of that mass that is water, 0 to below 1.</summary>
    public required double Moisture { get; init; }

    /// <summary>Carbon, share of the dry mass, above 0.</summary>
    public double Carbon { get; init; } = UsualCarbon;

    /// <summary>Nitrogen, share of the dry mass, above 0.</summary>
    public required double Nitrogen { get; init; }

    /// <summary>Mass of a cubic metre as it lies, kg/m³, above 0.</summary>
    public required double BulkDensityKgPerM3 { get; init; }

    /// <summary>Ash, share of the dry mass, 0 to 1.</summary>
    public double Ash { get; init; } = UsualAsh;

    /// <summary>What microbes take quickly, share of the dry mass, or null where it is not known.</summary>
    public double? Fast { get; init; }

    /// <summary>What microbes take slowly within a season, share of the dry mass, or null where it is not known.</summary>
    public double? Slow { get; init; }

    /// <summary>Dry mass, kg.</summary>
    public double DryMassKg => WetMassKg * (1 - Moisture);

    /// <summary>Water, kg.</summary>
    public double WaterKg => WetMassKg * Moisture;

    /// <summary>Carbon over nitrogen.</summary>
    public double CarbonToNitrogen => Carbon / Nitrogen;

    /// <summary>Volume as it lies, m³.</summary>
    public double VolumeM3 => WetMassKg / BulkDensityKgPerM3;

    /// <summary>Volume of its solids and water without any air, m³.</summary>
    public double FullVolumeM3 => WetMassKg / FullDensityKgPerM3(Moisture, Ash);

    /// <summary>
    /// Density that a material would have without any air in it, kg/m³; no bulk density can be above it. Particles of
    /// organic matter weigh 1600 kg/m³ and of ash 2500 kg/m³ (van Ginkel and others 1999, in use since Richard and
    /// others 2002; from memory).
    /// </summary>
    /// <param name="moisture">Share of the wet mass that is water, 0 to 1.</param>
    /// <param name="ash">Share of the dry mass that is ash, 0 to 1.</param>
    public static double FullDensityKgPerM3(double moisture, double ash)
    {
        const double organicKgPerM3 = 1600;
        const double ashKgPerM3 = 2500;
        const double waterKgPerM3 = 1000;
        Require.Within(moisture, 0, 1, "(share)");
        Require.Within(ash, 0, 1, "(share)");
        return 1 / ((moisture / waterKgPerM3) + ((1 - moisture) * (((1 - ash) / organicKgPerM3) + (ash / ashKgPerM3))));
    }
}
