using PileController.Physics.Heaps;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "air".</summary>
internal static class AirFields
{
    public static readonly FieldTable<DuctBuild> Table = new()
    {
        { "fullFlow", AirM3PerS(0, 2), d => d.FullFlowM3PerS, (d, v) => d with { FullFlowM3PerS = v }, "Air moved at full blower duty." },
        { "throughHeap", Flag, d => d.ThroughHeap, (d, v) => d with { ThroughHeap = v }, "Whether the blower draws air through the heap itself; that air is wet and may carry gases and spores." },
        { "blowerPower", Watts(0, 2000), d => d.BlowerWatts, (d, v) => d with { BlowerWatts = v }, "Electric power of the blower at full duty." },
    };
}
