namespace PileController.Physics.Recipes;

/// <summary>A band that a blend misses, and how much more of which of its own materials would mend it.</summary>
/// <param name="Band">The band.</param>
/// <param name="Value">What the blend has.</param>
/// <param name="More">The material to add, or null where more of none of them would do.</param>
/// <param name="MoreKg">How much of it, kg as delivered; 0 where there is none.</param>
public sealed record Mending(Band Band, double Value, Material? More, double MoreKg)
{
    /// <summary>Every band the blend misses once it is watered.</summary>
    /// <param name="blend">The blend.</param>
    public static IReadOnlyList<Mending> Of(Blend blend)
    {
        double wet = blend.WetMassKg + blend.WaterToAddKg;
        double air = blend.VolumeM3 * blend.WateredFreeAirSpace;
        return
        [
            .. Missed(blend, Band.Moisture, blend.WateredMoisture, (edge, m) => Share(wet - blend.DryMassKg, wet, edge, m.Moisture, 1)),
            .. Missed(blend, Band.CarbonToNitrogen, blend.CarbonToNitrogen, (edge, m) => Share(
                blend.CarbonKg, blend.NitrogenKg, edge, (1 - m.Moisture) * m.Carbon, (1 - m.Moisture) * m.Nitrogen)),
            .. Missed(blend, Band.BulkDensity, blend.WateredDensityKgPerM3, (edge, m) => Share(wet, blend.VolumeM3, edge, 1, 1 / m.BulkDensityKgPerM3)),
            .. Missed(blend, Band.FreeAirSpace, blend.WateredFreeAirSpace, (edge, m) => Share(
                air, blend.VolumeM3, edge, (m.VolumeM3 - m.FullVolumeM3) / m.WetMassKg, 1 / m.BulkDensityKgPerM3)),
        ];
    }

    // Every band bounds a ratio a/b. Adding x kg that bring p and q a kilogram gives (a + px)/(b + qx), which is the edge at this x;
    // not above 0, or not finite, where the material lies on the wrong side of it.
    private static double Share(double a, double b, double edge, double p, double q) => ((edge * b) - a) / (p - (edge * q));

    private static IEnumerable<Mending> Missed(Blend blend, Band band, double value, Func<double, Material, double> neededKg)
    {
        if (band.Holds(value))
        {
            yield break;
        }

        double edge = value < band.Least ? band.Least : band.Most;
        (Material? Material, double Kg) best = blend.Materials
            .Select(m => (Material: (Material?)m, Kg: neededKg(edge, m)))
            .Where(m => m.Kg > 0 && double.IsFinite(m.Kg))
            .DefaultIfEmpty()
            .MinBy(m => m.Kg);
        yield return new Mending(band, value, best.Material, best.Kg);
    }
}
