using PileController.Physics.Heaps;
using PileController.Plans.Sketch;
using PileController.Settings;

namespace PileController.Tests.Support;

/// <summary>
/// A stand-in for the sums of a plan: every field filled, the figures made up but moving with turns, radius and cover,
/// so that the calls and the page can be tried on their own. It can be held up, and counts how many run at once.
/// </summary>
public sealed class SampleSketch
{
    private int _running;
    private int _mostRunning;
    private int _made;

    /// <summary>While not set, sums wait.</summary>
    public ManualResetEventSlim Gate { get; } = new(initialState: true);

    /// <summary>Released each time a sum begins.</summary>
    public SemaphoreSlim Begun { get; } = new(0);

    /// <summary>Sums finished.</summary>
    public int Made => Volatile.Read(ref _made);

    /// <summary>The most that ran at one time.</summary>
    public int MostRunning => Volatile.Read(ref _mostRunning);

    /// <summary>Whether the newest sum ran on a thread that answers requests and ticks; null before the first.</summary>
    public bool? RanOnPool { get; private set; }

    /// <summary>What a sum throws, or null.</summary>
    public Exception? Throws { get; set; }

    internal PlanSketch Of(PileSettings settings)
    {
        int running = Interlocked.Increment(ref _running);
        _mostRunning = Math.Max(_mostRunning, running);
        RanOnPool = Thread.CurrentThread.IsThreadPoolThread;
        Begun.Release();
        Gate.Wait();
        Interlocked.Decrement(ref _running);
        Interlocked.Increment(ref _made);
        return Throws is null ? Make(settings) : throw Throws;
    }

    private static PlanSketch Make(PileSettings settings)
    {
        HeapBuild heap = settings.Heap;
        double mean = Mean(heap, heap.Coil.RadiusM);
        double dry = heap.WetMassKg * (1 - heap.MoistureFraction);
        double volume = Math.PI * heap.RadiusM * heap.RadiusM * heap.HeightM;
        return new PlanSketch(
            new SketchHeap(
                heap.RadiusM, heap.HeightM, heap.WetMassKg, 100 * heap.MoistureFraction, dry, dry * 0.51, dry * 0.51 * 17.6 / 3.6,
                volume, 2 * Math.PI * heap.RadiusM * heap.HeightM, heap.WetMassKg / volume, 48, 6, 96, 1900, heap.DrumLitres,
                [.. Enumerable.Range(1, 21).Select(week => Week(week, mean))]),
            new SketchCoil(
                heap.Coil.RadiusM, heap.Coil.LengthM, heap.Coil.LengthM / (2 * Math.PI * heap.Coil.RadiusM), heap.Coil.OuterDiameterM, 96, 34, mean,
                [.. Enumerable.Range(2, 8).Select(i => i * 0.2).Select(r => new SketchPlace(r, Mean(heap, r)))]),
            new SketchLoop(3.8, 2.4, 22, 5.8, 396, 0.55, 5200, true, 214, 95),
            new SketchAir(0.04, 620, 31, 700, 1850, 66, 950, 18),
            new SketchHouse(
                -15, 5, 6400, 42_000, 9600,
                [new("curtain", 4700, 7100), new("secondSkin", 3900, 5800), new("thermalMass", 6400, 9300), new("lowerSetPoint", 5800, 8100)]),
            [
                new("radius", "Turns at 0.8 m instead of 1 m add 40 W.", "Turns at 2.6 ft instead of 3.3 ft add 136 BTU/h.", 40),
                new("pump", "A bigger pump adds 4 W: not worth it.", "A bigger pump adds 14 BTU/h: not worth it.", 4),
                new("rewetting", "Give back 300 L in week 9.", "Give back 79 gal in week 9."),
            ],
            [new("massBalance", "The season draws 1,100 kWh of at most 10,000 kWh.", "The season draws 3,750 kBTU of at most 34,100 kBTU.")],
            [new("scald", "Water in the turns can scald. Local codes and licensed trades decide.", "Water in the turns can scald. Local codes and licensed trades decide.")]);
    }

    private static double Mean(HeapBuild heap, double radiusM) =>
        (heap.Coil.LengthM * 3 * Math.Exp(-Math.Pow(radiusM - 0.8, 2) / 0.5)) + (heap.CoverThicknessM * 100);

    private static SketchWeek Week(int week, double mean)
    {
        double shape = week * Math.Exp(-week / 6.0) / 2.2;
        return new SketchWeek(week, 1900 * shape, 900 * shape, mean * shape, 20 + (38 * shape), 14 + (30 * shape));
    }
}
