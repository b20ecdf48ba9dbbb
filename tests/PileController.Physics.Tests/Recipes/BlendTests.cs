using CsCheck;
using PileController.Physics.Heaps;
using PileController.Physics.Recipes;

namespace PileController.Physics.Tests.Recipes;

public class BlendTests
{
    private static readonly IReadOnlyDictionary<string, ReferenceRow> Rows = ReferenceRow.Read("recipes");

    private static readonly Material Grass = Of("grass", 10, 0.77, 0.45, 0.024, 400);
    private static readonly Material Leaves = Of("leaves", 1, 0.35, 0.50, 0.0075, 150);
    private static readonly Material Chips = Of("chips", 6000, 0.45, 0.50, 0.005, 300);
    private static readonly Material Manure = Of("manure", 3000, 0.72, 0.40, 0.02, 800);

    private static readonly Gen<Material> AnyMaterial = Gen.Select(
        Gen.Double[1, 10_000], Gen.Double[0, 0.9], Gen.Double[0.3, 0.6], Gen.Double[0.001, 0.06], Gen.Double[50, 900],
        (mass, moisture, carbon, nitrogen, density) => Of("any", mass, moisture, carbon, nitrogen, density));

    private static readonly Dictionary<string, Func<double>> Computed = new()
    {
        ["REC-001"] = () => 100 * new Blend([Grass, Leaves with { WetMassKg = 6.8 }], 0.6).Moisture,
        ["REC-002"] = () => LeavesFor(60, q => 100 * new Blend([Grass, Leaves with { WetMassKg = q }], 0).Moisture),
        ["REC-003"] = () => new Blend([Grass, Leaves with { WetMassKg = 3.474 }], 0.6).CarbonToNitrogen,
        ["REC-004"] = () => LeavesFor(-30, q => -new Blend([Grass, Leaves with { WetMassKg = q }], 0).CarbonToNitrogen),
        ["CMP-081a"] = () => 100 * Band.Moisture.Least,
        ["CMP-081b"] = () => 100 * Band.Moisture.Most,
        ["CMP-083a"] = () => Band.CarbonToNitrogen.Least,
        ["CMP-083b"] = () => Band.CarbonToNitrogen.Most,
        ["CMP-087"] = () => Band.BulkDensity.Most / 0.45359237 * 27 * 0.028316846592,
        ["CMP-022"] = () => Microbes.FreeAirSpace(Band.FreeAirSpace.Least),
    };

    public static TheoryData<string> Ids => [.. Rows.Keys];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Recipe_AtPublishedConditions_AgreesWithTheReference(string id) => Rows[id].Check(Computed[id]());

    [Fact]
    public void Blend_OfChipsAndManure_IsWhatAPersonWouldAddUp()
    {
        Blend blend = new([Chips, Manure], 0.60);

        // Dry: 3300 + 840 kg. Carbon: 1650 + 336 kg. Nitrogen: 16.5 + 16.8 kg. Volume: 20 + 3.75 m³.
        Assert.Equal(4140, blend.DryMassKg, 1e-9);
        Assert.Equal(1986 / 33.3, blend.CarbonToNitrogen, 1e-9);
        Assert.Equal(0.54, blend.Moisture, 1e-12);
        Assert.Equal((4140 / 0.4) - 9000, blend.WaterToAddKg, 1e-9);
        Assert.Equal(0.60, blend.WateredMoisture, 1e-12);
        Assert.Equal(23.75, blend.VolumeM3, 1e-12);
        Assert.Equal(9000 / 23.75, blend.BulkDensityKgPerM3, 1e-9);
        Assert.Null(blend.DegradableKg);
    }

    [Fact]
    public void Blend_AlreadyWetEnough_WantsNoWater() => Assert.Equal(0, new Blend([Manure], 0.55).WaterToAddKg);

    [Fact]
    public void Blend_OfMaterialsThatAllSayWhatRots_AddsItUp()
    {
        Blend blend = new([Chips with { Fast = 0.02, Slow = 0.4 }, Manure with { Fast = 0.25, Slow = 0.3 }], 0.55);

        Assert.Equal((3300 * 0.02) + (840 * 0.25), blend.FastKg!.Value, 1e-9);
        Assert.Equal((3300 * 0.42) + (840 * 0.55), blend.DegradableKg!.Value, 1e-9);
    }

    [Fact]
    public void Blend_OfNothing_IsRefused() => Assert.Throws<ArgumentException>(() => new Blend([], 0.55));

    [Fact]
    public void FreeAirSpace_OfDryOrganicMatter_IsWhatItsParticlesLeave()
    {
        // 400 kg/m³ of dry matter without ash at 1600 kg/m³ fill a quarter; half water at 1000 kg/m³: 200/1600 + 200/1000.
        Assert.Equal(0.75, new Blend([Of("dry", 400, 0, 0.5, 0.01, 400) with { Ash = 0 }], 0).FreeAirSpace, 1e-12);
        Assert.Equal(1 - 0.125 - 0.2, new Blend([Of("moist", 400, 0.5, 0.5, 0.01, 400) with { Ash = 0 }], 0).FreeAirSpace, 1e-12);
    }

    [Fact]
    public void Blend_OfAnyMaterials_LiesBetweenThem() =>
        AnyMaterial.Array[1, 5].Sample(materials =>
        {
            Blend blend = new(materials, 0.55);
            const double slack = 1e-9;
            Assert.InRange(blend.Moisture, materials.Min(m => m.Moisture) - slack, materials.Max(m => m.Moisture) + slack);
            Assert.InRange(blend.CarbonToNitrogen, materials.Min(m => m.CarbonToNitrogen) * (1 - slack), materials.Max(m => m.CarbonToNitrogen) * (1 + slack));
            Assert.InRange(blend.BulkDensityKgPerM3, materials.Min(m => m.BulkDensityKgPerM3) * (1 - slack), materials.Max(m => m.BulkDensityKgPerM3) * (1 + slack));
            Assert.True(blend.WateredMoisture >= Math.Max(0.55, blend.Moisture) - slack);
        });

    [Fact]
    public void Blend_InAnyOrder_IsTheSame() =>
        AnyMaterial.Array[2, 5].Sample(materials => Assert.Equal(
            new Blend(materials, 0.55).CarbonToNitrogen, new Blend([.. materials.Reverse()], 0.55).CarbonToNitrogen, 1e-6));

    private static double LeavesFor(double wanted, Func<double, double> falling)
    {
        double low = 0.01;
        double high = 100;
        while (high - low > 1e-6)
        {
            double middle = 0.5 * (low + high);
            (low, high) = falling(middle) > wanted ? (middle, high) : (low, middle);
        }

        return low;
    }

    private static Material Of(string name, double wetKg, double moisture, double carbon, double nitrogen, double density) => new()
    {
        Name = name,
        WetMassKg = wetKg,
        Moisture = moisture,
        Carbon = carbon,
        Nitrogen = nitrogen,
        BulkDensityKgPerM3 = density,
    };
}
