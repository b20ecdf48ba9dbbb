using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Plans.Recipes;

/// <summary>The keys of a recipe file.</summary>
internal static class RecipeFields
{
    private static readonly FieldTable<RecipeMaterial> Material = new()
    {
        { "name", Text("1 to 60 letters", t => t.Trim().Length is > 0 and <= 60), m => m.Name, (m, v) => m with { Name = v! }, "What it is.", true },
        { "mass", Optional(Kilograms(0.1, 500_000)), m => m.WetMassKg, (m, v) => m with { WetMassKg = v }, "Mass with its water; this or the volume." },
        { "volume", Optional(CubicMetres(0.001, 5000)), m => m.VolumeM3, (m, v) => m with { VolumeM3 = v }, "Volume as it lies; this or the mass." },
        { "bulkDensity", Optional(KilogramsPerM3(20, 1500)), m => m.BulkDensityKgPerM3, (m, v) => m with { BulkDensityKgPerM3 = v }, "Mass of its volume as it lies: weigh a bucket. May be left out where mass and volume are both given." },
        { "moisture", Share(0, 0.95), m => m.Moisture, (m, v) => m with { Moisture = v }, "Share of its mass that is water.", true },
        { "carbonToNitrogen", Optional(Number(2, 1000, "parts of carbon to one of nitrogen")), m => m.CarbonToNitrogen, (m, v) => m with { CarbonToNitrogen = v }, "C:N; this or the share of nitrogen." },
        { "carbon", Optional(Share(0.05, 0.65)), m => m.Carbon, (m, v) => m with { Carbon = v }, "Share of carbon in the dry mass, 0.5 unless given (from memory)." },
        { "nitrogen", Optional(Share(0.0002, 0.16)), m => m.Nitrogen, (m, v) => m with { Nitrogen = v }, "Share of nitrogen in the dry mass; this or the C:N." },
        { "ash", Optional(Share(0, 0.9)), m => m.Ash, (m, v) => m with { Ash = v }, "Share of ash in the dry mass, 0.05 unless given (from memory)." },
        { "fast", Optional(Share(0, 0.9)), m => m.Fast, (m, v) => m with { Fast = v }, "Share of the dry mass that microbes take quickly." },
        { "slow", Optional(Share(0, 0.9)), m => m.Slow, (m, v) => m with { Slow = v }, "Share of the dry mass that microbes take slowly within a season." },
    };

    public static readonly FieldTable<Recipe> Table = new()
    {
        { "targetMoisture", Share(0.2, 0.8), r => r.TargetMoisture, (r, v) => r with { TargetMoisture = v }, "Share of water the heap is to start with." },
        { "materials", Material, new RecipeMaterial(), _ => new RecipeMaterial(), r => r.Materials, (r, v) => r with { Materials = v }, "What is mixed, one material or more." },
    };
}
