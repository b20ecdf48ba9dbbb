using PileController.Physics.Heaps;
using PileController.Settings.Checks;

namespace PileController.Panel.Planning;

/// <summary>One thing about the heap that a grower may try otherwise.</summary>
/// <param name="Name">Its name in the query, with its unit.</param>
/// <param name="Path">The setting behind it.</param>
/// <param name="Least">The least, m, or turns.</param>
/// <param name="Most">The most for a heap as built.</param>
/// <param name="Of">What it is now.</param>
/// <param name="With">The heap with another value.</param>
internal sealed record TryField(
    string Name, string Path, double Least, Func<HeapBuild, double> Most,
    Func<HeapBuild, double> Of, Func<HeapBuild, double, HeapBuild> With)
{
    private const double LeastTurnsRadiusM = 0.2;

    /// <summary>All, in the order in which they are put on: pipe is cut last, when it is known how wide its turns are.</summary>
    public static IReadOnlyList<TryField> All { get; } =
    [
        new("heapRadiusM", "heap.radius", 0.5, _ => 6, h => h.RadiusM, WithHeapRadius),
        new("coverM", "heap.cover", 0, _ => 1, h => h.CoverThicknessM, (h, v) => h with { CoverThicknessM = v }),
        new("radiusM", "heap.coil.radius", LeastTurnsRadiusM, _ => 6, h => h.Coil.RadiusM, (h, v) => h with { Coil = h.Coil with { RadiusM = v } }),
        new("lengthM", "heap.coil.length", 0, _ => 1000, h => h.Coil.LengthM, WithLength),
        new("turns", "heap.coil.length", 0, MostTurns, TurnsOf, (h, v) => WithLength(h, v * RoundM(h))),
    ];

    /// <summary>Turns that the pipe makes.</summary>
    public static double TurnsOf(HeapBuild heap) => heap.Coil.RadiusM > 0 ? heap.Coil.LengthM / RoundM(heap) : 0;

    // Turns three diameters apart over the height, as the check of the settings has it.
    private static double MostTurns(HeapBuild heap) =>
        heap.Coil.RadiusM > 0 ? Math.Floor(HeapChecks.LongestCoilM(heap) / RoundM(heap)) : 0;

    private static double RoundM(HeapBuild heap) => 2 * Math.PI * heap.Coil.RadiusM;

    private static HeapBuild WithLength(HeapBuild heap, double lengthM) => heap with { Coil = heap.Coil with { LengthM = lengthM } };

    // A wider heap is more of the same stuff, laid as densely.
    private static HeapBuild WithHeapRadius(HeapBuild heap, double radiusM)
    {
        double ratio = radiusM / heap.RadiusM;
        return heap with { RadiusM = radiusM, WetMassKg = heap.WetMassKg * ratio * ratio };
    }
}
