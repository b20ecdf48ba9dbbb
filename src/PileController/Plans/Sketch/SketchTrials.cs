using PileController.Physics.Heaps;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Plans.Sketch;

/// <summary>
/// The trials a sketch is made of. All stand in the same weather, with the same water coming back, so that two of them
/// differ by nothing but what was changed.
/// </summary>
internal sealed class SketchTrials
{
    // Where the reckoning of the return begins; one trial later it rests on what that heap gives.
    private const double FirstDrawWatts = 600;

    private readonly HeapSite[] _sites;

    public SketchTrials(PileSettings settings, WeatherSeries weather, DateOnly start, int days)
    {
        Settings = settings;
        Days = days;
        int offset = HoldingBuild.StandardOffsetMinutes(settings);
        StartUtcMilliseconds =
            new DateTimeOffset(start.ToDateTime(TimeOnly.MinValue), TimeSpan.FromMinutes(offset)).ToUnixTimeMilliseconds();
        OffsetMinutes = offset;
        Weather = weather;
        _sites = HeapTrial.Sites(weather, StartUtcMilliseconds, days, settings.House.GroundC);
        HasWater = settings.Heap.Coil.LengthM > 0 || settings.Heap.DrumLitres > 0;
        double houseC = settings.Control.HouseNightC;
        FullFlow = FlowOf(settings.Loop, settings.Heap.Coil);
        Draw = new TrialDraw
        {
            FloorC = settings.Control.HeapFloorC,
            LitC = settings.Control.HeapLitC,
            AirC = houseC,
            Blows = settings.Control.BlowerFitted && (settings.Heap.Duct.ThroughHeap || !HasWater),
            FlowLitresPerMinute = HasWater ? FullFlow.FlowLitresPerMinute : 0,
            ReturnC = ReturnOf(settings.Loop, houseC, FullFlow.FlowLitresPerMinute, FirstDrawWatts),
        };
        HeapTrialResult first = Run(settings.Heap, Draw);
        double drawingDays = first.Days - (first.LitOnDay ?? 0);
        double drawnWatts = drawingDays > 0 ? first.WaterWatts * first.Days / drawingDays : FirstDrawWatts;
        Draw = Draw with { ReturnC = ReturnOf(settings.Loop, houseC, FullFlow.FlowLitresPerMinute, drawnWatts) };
        Base = Run(settings.Heap, Draw);
        Undrawn = Run(settings.Heap, Draw with { FlowLitresPerMinute = 0, Blows = false });
    }

    public PileSettings Settings { get; }

    public WeatherSeries Weather { get; }

    public int Days { get; }

    public long StartUtcMilliseconds { get; }

    public int OffsetMinutes { get; }

    public bool HasWater { get; }

    /// <summary>The pump at full duty on its loop, valve open, water as it comes back.</summary>
    public OperatingPoint FullFlow { get; }

    /// <summary>How the heap is drawn on.</summary>
    public TrialDraw Draw { get; }

    /// <summary>The heap as it is built.</summary>
    public HeapTrialResult Base { get; }

    /// <summary>The same heap left alone. It runs hotter and loses more water.</summary>
    public HeapTrialResult Undrawn { get; }

    public HeapTrialResult Run(HeapBuild heap, TrialDraw draw) => HeapTrial.Run(heap, draw, _sites);

    /// <summary>The heap with a change, with the flow its pipe then has.</summary>
    public HeapTrialResult With(HeapBuild heap) =>
        Run(heap, HasWater ? Draw with { FlowLitresPerMinute = FlowOf(Settings.Loop, heap.Coil).FlowLitresPerMinute } : Draw);

    /// <summary>The same heap on a changed loop.</summary>
    public HeapTrialResult With(LoopBuild loop) =>
        Run(Settings.Heap, Draw with { FlowLitresPerMinute = FlowOf(loop, Settings.Heap.Coil).FlowLitresPerMinute });

    /// <summary>What a change brings, W on the season's mean.</summary>
    public double GainWatts(HeapTrialResult changed) => changed.DrawnWatts - Base.DrawnWatts;

    /// <summary>Where a pump works on a loop.</summary>
    public static OperatingPoint FlowOf(LoopBuild loop, CoilBuild coil) =>
        OperatingPoint.Of(LoopCircuit.Pump(loop), 1, LoopCircuit.Runs(loop, coil), LoopSketching.WaterC);

    // The house pipe and the tank give all that was drawn: so warm must the water leave them.
    private static double ReturnOf(LoopBuild loop, double houseC, double flowLitresPerMinute, double drawnWatts)
    {
        if (flowLitresPerMinute <= 0)
        {
            return houseC;
        }

        double carried = LoopSketching.CapacityRateWPerK(flowLitresPerMinute);
        double given = (loop.HousePipeM * loop.HousePipeWPerMK) + loop.TankLossWPerK;
        double left = Math.Exp(-given / carried);
        return Math.Clamp(houseC + (drawnWatts / carried * left / (1 - left)), 0, 45);
    }
}
