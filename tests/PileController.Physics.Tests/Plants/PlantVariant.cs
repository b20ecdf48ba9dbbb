using PileController.Physics.Heaps;
using PileController.Physics.Houses;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;

namespace PileController.Physics.Tests.Plants;

/// <summary>Holdings with and without each thing that can be buried in the heap.</summary>
internal static class PlantVariant
{
    public const string Shipped = "as shipped";
    public const string NoDrum = "no drum";
    public const string NoCoil = "no coil";
    public const string Bare = "neither drum, coil nor duct";
    public const string ThroughHeap = "air drawn through the heap";

    public static TheoryData<string> All => [Shipped, NoDrum, NoCoil, Bare, ThroughHeap];

    public static PlantBuild Of(string variant)
    {
        HeapBuild heap = new();
        CoilBuild noCoil = new() { LengthM = 0 };
        return Holding(variant switch
        {
            NoDrum => heap with { DrumLitres = 0 },
            NoCoil => heap with { Coil = noCoil },
            Bare => heap with { DrumLitres = 0, Coil = noCoil, Duct = new DuctBuild { LengthM = 0 } },
            ThroughHeap => heap with { Duct = new DuctBuild { ThroughHeap = true, FullFlowM3PerS = 0.004 } },
            _ => heap,
        });
    }

    public static PlantBuild Holding(HeapBuild heap) =>
        new(heap, new HouseBuild(), new LoopBuild(), new PowerBuild { BatteryWattHours = 0 });
}
