using PileController.Physics.Heaps;

namespace PileController.Settings.Checks;

/// <summary>What can be built.</summary>
internal static class HeapChecks
{
    // A loose heap of dry chips and a heap sodden through; common practice, no source.
    private const double LoosestKgPerM3 = 150;
    private const double DensestKgPerM3 = 1100;

    // Turns closer than three diameters cool the same chips twice; common practice, no source.
    private const double ClosestPitchInDiameters = 3;

    public static readonly Check[] All =
    [
        Check.That(
            "heap.wetMass", ["heap.radius", "heap.height"],
            s => Density(s.Heap) is >= LoosestKgPerM3 and <= DensestKgPerM3
                ? null
                : $"{LoosestKgPerM3 * Volume(s.Heap):F0} kg to {DensestKgPerM3 * Volume(s.Heap):F0} kg in {Volume(s.Heap):F1} m3 "
                    + $"({LoosestKgPerM3:F0} to {DensestKgPerM3:F0} kg/m3)",
            s => $"{s.Heap.WetMassKg:F0} kg, {Density(s.Heap):F0} kg/m3"),
        Check.That(
            "heap.fast", ["heap.slow"],
            s => s.Heap.FastFraction + s.Heap.SlowFraction <= 1 ? null : "heap.fast and heap.slow together at most 1",
            s => $"{s.Heap.FastFraction:G4} with heap.slow {s.Heap.SlowFraction:G4}, together {s.Heap.FastFraction + s.Heap.SlowFraction:G4}"),
        Check.That(
            "heap.coil.length", ["heap.coil.radius", "heap.coil.outerDiameter", "heap.height"],
            s => s.Heap.Coil.LengthM <= LongestCoilM(s.Heap)
                ? null
                : $"at most {LongestCoilM(s.Heap):F0} m: turns at that radius, three diameters apart, over the height",
            s => $"{s.Heap.Coil.LengthM:G6} m"),
        Check.That(
            "heap.drum", ["heap.radius", "heap.height"],
            s => s.Heap.DrumLitres < 1000 * Volume(s.Heap) / 2
                ? null
                : $"less than half of the heap's volume, {1000 * Volume(s.Heap) / 2:F0} L",
            s => $"{s.Heap.DrumLitres:G6} L"),
        Check.That(
            "control.told.blowerFitted", ["heap.ducts.length", "air.throughHeap"],
            s => !s.Control.BlowerFitted || s.Heap.Duct.ThroughHeap || s.Heap.Duct.LengthM > 0
                ? null
                : "false, or a heap.ducts.length above 0 m, or air.throughHeap true",
            _ => "true without a way for the air"),
    ];

    private static double Volume(HeapBuild heap) => Math.PI * heap.RadiusM * heap.RadiusM * heap.HeightM;

    private static double Density(HeapBuild heap) => heap.WetMassKg / Volume(heap);

    /// <summary>Longest pipe that fits as turns at its radius.</summary>
    internal static double LongestCoilM(HeapBuild heap) =>
        2 * Math.PI * heap.Coil.RadiusM * heap.HeightM / (ClosestPitchInDiameters * heap.Coil.OuterDiameterM);
}
