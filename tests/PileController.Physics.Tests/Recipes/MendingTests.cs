using CsCheck;
using PileController.Physics.Recipes;

namespace PileController.Physics.Tests.Recipes;

public class MendingTests
{
    private static readonly Material Chips = new()
    {
        Name = "chips",
        WetMassKg = 8000,
        Moisture = 0.45,
        Nitrogen = 0.002,
        BulkDensityKgPerM3 = 300,
    };

    private static readonly Material Manure = Chips with { Name = "manure", WetMassKg = 500, Moisture = 0.75, Nitrogen = 0.03, BulkDensityKgPerM3 = 850 };

    private static readonly Gen<Material> AnyMaterial = Gen.Select(
        Gen.Double[10, 10_000], Gen.Double[0.05, 0.85], Gen.Double[0.002, 0.06], Gen.Double[80, 950],
        (mass, moisture, nitrogen, density) => Chips with { WetMassKg = mass, Moisture = moisture, Nitrogen = nitrogen, BulkDensityKgPerM3 = density });

    [Fact]
    public void Mending_OfTooWoodyABlend_AsksForManureUpToTheEdge()
    {
        Mending missed = Assert.Single(Mending.Of(new Blend([Chips, Manure], 0.55)));

        Assert.Equal("carbonToNitrogen", missed.Band.Kind);
        Assert.Equal("manure", missed.More?.Name);
        Blend mended = new([Chips, Manure with { WetMassKg = 500 + missed.MoreKg }], 0.55);
        Assert.Equal(60, mended.CarbonToNitrogen, 1e-6);
    }

    [Fact]
    public void Mending_OfSlurryAlone_FindsNothingOfItsOwnThatWouldHelp()
    {
        IReadOnlyList<Mending> missed = Mending.Of(new Blend([Manure with { BulkDensityKgPerM3 = 950 }], 0.55));

        Assert.Equal(["moisture", "carbonToNitrogen", "bulkDensity", "freeAirSpace"], missed.Select(m => m.Band.Kind));
        Assert.All(missed, m => Assert.Null(m.More));
    }

    [Fact]
    public void Mending_OfASoundBlend_IsEmpty() =>
        Assert.Empty(Mending.Of(new Blend([Chips, Manure with { WetMassKg = 6000 }], 0.55)));

    // Volumes and masses add, so the material named brings its ratio to the edge; water to be added is left as it was.
    [Fact]
    public void Mending_OfAnyBlend_BringsCarbonToNitrogenToTheEdge() =>
        AnyMaterial.Array[2, 4].Sample(materials =>
        {
            Mending? missed = Mending.Of(new Blend(materials, 0.55)).FirstOrDefault(m => m.Band.Kind == "carbonToNitrogen");
            if (missed?.More is { } more)
            {
                Blend mended = new([.. materials, more with { WetMassKg = missed.MoreKg }], 0.55);
                double edge = missed.Value < missed.Band.Least ? missed.Band.Least : missed.Band.Most;
                Assert.Equal(edge, mended.CarbonToNitrogen, 1e-6 * edge);
            }
        });

    [Fact]
    public void Mending_OfAnyWetOrDenseBlend_BringsTheRatioToTheEdge() =>
        AnyMaterial.Array[2, 4].Sample(materials =>
        {
            // A target below any moisture adds no water, so that the mended blend can be weighed as it is.
            const double noWater = 0.01;
            foreach (Mending missed in Mending.Of(new Blend(materials, noWater)).Where(m => m.More is not null))
            {
                Blend mended = new([.. materials, missed.More! with { WetMassKg = missed.MoreKg }], noWater);
                double edge = missed.Value < missed.Band.Least ? missed.Band.Least : missed.Band.Most;
                double now = missed.Band.Kind switch
                {
                    "moisture" => mended.WateredMoisture,
                    "carbonToNitrogen" => mended.CarbonToNitrogen,
                    "bulkDensity" => mended.WateredDensityKgPerM3,
                    _ => mended.WateredFreeAirSpace,
                };
                if (missed.Value > 0)
                {
                    Assert.Equal(edge, now, 1e-6 * edge);
                }
            }
        });
}
