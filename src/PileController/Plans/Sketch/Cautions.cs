using PileController.Physics.Heaps;
using PileController.Settings;
using PileController.Units;

namespace PileController.Plans.Sketch;

/// <summary>What can hurt someone in this build.</summary>
internal static class Cautions
{
    // Water of 49 °C burns within minutes, of 60 °C within seconds (exposure time to burn table).
    private const double ScaldC = 48;

    // Legionella multiplies between 25 and 45 °C (World Health Organization).
    private const double GrowthFromC = 25;
    private const double GrowthToC = 45;
    private const double SoonMinutes = 24 * 60;

    public static IReadOnlyList<PlanWords> Of(SketchTrials trials, SketchLoop loop, SketchAir air)
    {
        PileSettings settings = trials.Settings;
        HeapBuild heap = settings.Heap;
        List<PlanWords> said = [];
        void Add(bool applies, string kind, Func<UnitSystem, string> words)
        {
            if (applies)
            {
                said.Add(Say.Caution(kind, words));
            }
        }

        double hottest = trials.Base.HottestC;
        Add(
            trials.HasWater && hottest >= ScaldC, "scald",
            u => $"The heap reaches {Show.Temperature(hottest, u)} here, and water that has stood in its pipe leaves nearly as hot: water of {Show.Temperature(60, u)} "
                + "burns skin in seconds. Put a mixing valve before anything a hand can reach, and a relief valve on whatever can be shut off.");
        Add(
            trials.HasWater, "warmWater",
            u => $"Tank and drum can stand between {Show.Temperature(GrowthFromC, u)} and {Show.Temperature(GrowthToC, u)} for weeks, where Legionella multiplies: "
                + "keep the loop closed, never drink from it, never spray it, never join it to drinking water.");
        Add(
            loop.MinutesToFreezeStill is <= SoonMinutes, "frost",
            u => $"Still water in the lines outside freezes within {Show.Time(60 * (loop.MinutesToFreezeStill ?? 0))} on the design night once the pump stands: "
                + "insulate and bury them, let them fall to a drain, or fill the loop with an antifreeze meant for it.");
        Add(
            true, "electricity",
            _ => "Pump, blower and probes stand by water: extra-low voltage or a residual-current device, joints above any flood, and a licensed electrician for mains.");
        Add(
            heap.Duct.ThroughHeap, "gases",
            u => $"Air drawn through the heap carries carbon dioxide, ammonia and spores, and {Show.Mass(air.ThroughWaterLostKgPerDay, u)} of water a day at full blower: "
                + "not into a house where people work without a condenser, a vent to the open and a carbon dioxide alarm.");
        Add(
            true, "dust",
            _ => "Moving and forking chips raises spores: wear a mask, wet the face of the heap, and keep people with asthma or weak defences away.");
        Add(
            true, "fire",
            u => $"A heap above {Show.Temperature(settings.Control.Limits.HeapFireC, u)} can take fire. Do not open it: air feeds it. Keep people away and call the fire service. "
                + "Build it away from walls, fences and dry stacks.");
        Add(
            true, "burial",
            u => $"The heap is {Show.Length(heap.HeightM, u)} high and {Show.Mass(heap.WetMassKg, u)}: a steep side can bury a child. Never tunnel into it or stand on it, "
                + "and lift drum, ducts and wet chips by machine or by two.");
        return said;
    }
}
