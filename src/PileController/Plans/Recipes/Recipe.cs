namespace PileController.Plans.Recipes;

/// <summary>What goes into a heap, as its builder writes it down.</summary>
internal sealed record Recipe
{
    /// <summary>Before a key is read.</summary>
    public static Recipe Blank { get; } = new();

    /// <summary>Nine tonnes as Alder Bank might mix them; figures of the materials are from memory.</summary>
    public static Recipe Example { get; } = new()
    {
        TargetMoisture = 0.6,
        Materials =
        [
            new() { Name = "green hardwood chips", WetMassKg = 5500, Moisture = 0.45, CarbonToNitrogen = 100, BulkDensityKgPerM3 = 300, Ash = 0.02, Fast = 0.02, Slow = 0.42 },
            new() { Name = "stable manure with bedding", VolumeM3 = 6, Moisture = 0.65, Carbon = 0.42, CarbonToNitrogen = 25, BulkDensityKgPerM3 = 500, Ash = 0.15, Fast = 0.2, Slow = 0.35 },
            new() { Name = "fresh greens", WetMassKg = 500, Moisture = 0.8, Carbon = 0.45, Nitrogen = 0.03, BulkDensityKgPerM3 = 250, Ash = 0.1, Fast = 0.4, Slow = 0.3 },
        ],
    };

    /// <summary>Share of water the heap is to start with.</summary>
    public double TargetMoisture { get; init; } = 0.55;

    /// <summary>What is mixed.</summary>
    public IReadOnlyList<RecipeMaterial> Materials { get; init; } = [];
}
