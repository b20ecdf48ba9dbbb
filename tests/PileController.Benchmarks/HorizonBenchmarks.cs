using BenchmarkDotNet.Attributes;
using PileController.Control;
using PileController.Control.Estimation;
using PileController.Control.Foresight;

namespace PileController.Benchmarks;

/// <summary>One look of the horizon: every course over the look-ahead, on the models of heap and house.</summary>
[MemoryDiagnoser]
public class HorizonBenchmarks
{
    private static readonly ControlSettings Settings = new();
    private static readonly HeapShape Shape = new(Settings);
    private readonly double[] _heapC = new double[HeapShape.Nodes];
    private readonly double[] _spentJPerM3K = new double[HeapShape.Nodes];
    private readonly double[] _outsideC = new double[(int)Settings.LookAheadHours];
    private readonly double[] _gainW = new double[(int)Settings.LookAheadHours];

    [GlobalSetup]
    public void Setup()
    {
        Array.Fill(_heapC, 55);
        Array.Fill(_spentJPerM3K, 0.2e6);
        for (int h = 0; h < _outsideC.Length; h++)
        {
            _outsideC[h] = -6 + (4 * Math.Sin(h * Math.PI / 12));
        }
    }

    [Benchmark]
    public Course Horizon_Solve() => Horizon.Solve(
        new HorizonTask
        {
            Settings = Settings,
            Heap = HeapFigures.Told(Settings, Shape) with { SpentJPerM3K = _spentJPerM3K },
            HeapC = _heapC,
            LeastZoneC = 46,
            ReserveKelvin = 18,
            House = HouseModel.Of(Settings, HouseMemory.Fresh),
            HouseNow = new HouseState(6, 9, 12),
            OutsideC = _outsideC,
            GainW = _gainW,
            At = new Instant(1_763_000_000_000, 0, 0),
        },
        Course.Usual);
}
