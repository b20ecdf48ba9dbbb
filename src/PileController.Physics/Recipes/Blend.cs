namespace PileController.Physics.Recipes;

/// <summary>
/// Materials mixed into one heap. Masses of water, carbon and nitrogen add up (Cornell Waste Management Institute,
/// moisture and C/N of a mixture); so are volumes taken to, though a mix settles a little below their sum.
/// </summary>
public sealed class Blend
{
    private readonly double _fullM3;

    /// <summary>Mixes materials and waters them.</summary>
    /// <param name="materials">At least one.</param>
    /// <param name="targetMoisture">Share of water the mix is to have, 0 to below 1.</param>
    /// <exception cref="ArgumentException">No material.</exception>
    public Blend(IReadOnlyList<Material> materials, double targetMoisture)
    {
        if (materials.Count == 0)
        {
            throw new ArgumentException("A blend needs at least one material.", nameof(materials));
        }

        Require.Within(targetMoisture, 0, 0.999, "(share)");
        Materials = materials;
        WetMassKg = materials.Sum(m => m.WetMassKg);
        DryMassKg = materials.Sum(m => m.DryMassKg);
        CarbonKg = materials.Sum(m => m.DryMassKg * m.Carbon);
        NitrogenKg = materials.Sum(m => m.DryMassKg * m.Nitrogen);
        VolumeM3 = materials.Sum(m => m.VolumeM3);
        _fullM3 = materials.Sum(m => m.FullVolumeM3);
        WaterToAddKg = Math.Max(0, (DryMassKg / (1 - targetMoisture)) - WetMassKg);
        FastKg = SumWhereAllSay(m => m.Fast);
        SlowKg = SumWhereAllSay(m => m.Slow);
    }

    /// <summary>What was mixed.</summary>
    public IReadOnlyList<Material> Materials { get; }

    /// <summary>Mass as mixed, before watering, kg.</summary>
    public double WetMassKg { get; }

    /// <summary>Dry mass, kg.</summary>
    public double DryMassKg { get; }

    /// <summary>Carbon, kg.</summary>
    public double CarbonKg { get; }

    /// <summary>Nitrogen, kg.</summary>
    public double NitrogenKg { get; }

    /// <summary>Carbon over nitrogen.</summary>
    public double CarbonToNitrogen => CarbonKg / NitrogenKg;

    /// <summary>Share of water as mixed, before watering.</summary>
    public double Moisture => 1 - (DryMassKg / WetMassKg);

    /// <summary>Water that brings the mix to its target, kg (litres); 0 where it is as wet already.</summary>
    public double WaterToAddKg { get; }

    /// <summary>Share of water after watering.</summary>
    public double WateredMoisture => 1 - (DryMassKg / (WetMassKg + WaterToAddKg));

    /// <summary>Volume as mixed, m³; water fills pores and adds nothing to it.</summary>
    public double VolumeM3 { get; }

    /// <summary>Bulk density as mixed, kg/m³.</summary>
    public double BulkDensityKgPerM3 => WetMassKg / VolumeM3;

    /// <summary>Bulk density after watering, kg/m³.</summary>
    public double WateredDensityKgPerM3 => (WetMassKg + WaterToAddKg) / VolumeM3;

    /// <summary>Share of the volume that is air, as mixed: what solids and water leave of it.</summary>
    public double FreeAirSpace => 1 - (_fullM3 / VolumeM3);

    /// <summary>Share of the volume that is air after watering; 0 where the water would stand above it.</summary>
    public double WateredFreeAirSpace => Math.Max(0, 1 - ((_fullM3 + (WaterToAddKg / 1000)) / VolumeM3));

    /// <summary>Dry mass that microbes take quickly, kg, or null where a material does not say.</summary>
    public double? FastKg { get; }

    /// <summary>Dry mass that microbes take slowly within a season, kg, or null where a material does not say.</summary>
    public double? SlowKg { get; }

    /// <summary>Both, kg, or null where a material does not say.</summary>
    public double? DegradableKg => FastKg + SlowKg;

    private double? SumWhereAllSay(Func<Material, double?> share) =>
        Materials.All(m => share(m) is not null) ? Materials.Sum(m => m.DryMassKg * share(m)) : null;
}
