using PileController.Physics.Recipes;

namespace PileController.Plans.Recipes;

/// <summary>One material of a recipe: what its writer knows of it, null for the rest.</summary>
internal sealed record RecipeMaterial
{
    public string Name { get; init; } = "";

    /// <summary>Mass with its water, kg.</summary>
    public double? WetMassKg { get; init; }

    /// <summary>Volume as it lies, m³.</summary>
    public double? VolumeM3 { get; init; }

    /// <summary>Mass of a cubic metre as it lies, kg/m³.</summary>
    public double? BulkDensityKgPerM3 { get; init; }

    /// <summary>Share of the wet mass that is water.</summary>
    public double Moisture { get; init; }

    public double? CarbonToNitrogen { get; init; }

    /// <summary>Share of the dry mass.</summary>
    public double? Carbon { get; init; }

    /// <summary>Share of the dry mass.</summary>
    public double? Nitrogen { get; init; }

    /// <summary>Share of the dry mass.</summary>
    public double? Ash { get; init; }

    /// <summary>Share of the dry mass.</summary>
    public double? Fast { get; init; }

    /// <summary>Share of the dry mass.</summary>
    public double? Slow { get; init; }

    /// <summary>Share of ash told or usual.</summary>
    public double AshShare => Ash ?? Material.UsualAsh;

    /// <summary>Carbon told, or that of the nitrogen and the ratio told, or the usual one.</summary>
    public double CarbonShare => Carbon ?? (CarbonToNitrogen * Nitrogen) ?? Material.UsualCarbon;

    /// <summary>Nitrogen told, or that of the carbon and the ratio; null where it cannot be known.</summary>
    public double? NitrogenShare => Nitrogen ?? (CarbonShare / CarbonToNitrogen);

    /// <summary>Bulk density told, or mass over volume; null where it cannot be known.</summary>
    public double? Density => BulkDensityKgPerM3 ?? (WetMassKg / VolumeM3);

    /// <summary>The material with all it takes to be mixed; only for one that <see cref="RecipeChecks"/> find sound.</summary>
    public Material ToMaterial() => new()
    {
        Name = Name,
        WetMassKg = WetMassKg ?? (VolumeM3!.Value * BulkDensityKgPerM3!.Value),
        Moisture = Moisture,
        Carbon = CarbonShare,
        Nitrogen = NitrogenShare!.Value,
        BulkDensityKgPerM3 = Density!.Value,
        Ash = AshShare,
        Fast = Fast,
        Slow = Slow,
    };
}
