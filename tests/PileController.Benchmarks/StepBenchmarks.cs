using BenchmarkDotNet.Attributes;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Benchmarks;

/// <summary>One tick of control, and one tick of the whole pipeline, from the demo's warm start.</summary>
[MemoryDiagnoser]
public class StepBenchmarks
{
    private static readonly Command[] NoCommands = [];
    private Holding _holding = null!;
    private RigReadings _readings = RigReadings.None;
    private Memory _memory = Memory.Fresh;
    private Instant _at;

    [GlobalSetup]
    public void Setup()
    {
        PileSettings settings = PileSettings.AlderBank;
        _holding = new Holding(
            HoldingBuild.Plant(settings), settings.Control, settings.Rig, Demo.Weather(HoldingBuild.Place(settings)),
            HoldingBuild.StandardOffsetMinutes(settings), WarmStart.Shipped().State);
        _readings = _holding.Read();
        _memory = _holding.Memory;
        _at = _holding.Now;
    }

    [Benchmark]
    public Decision Control_Step() =>
        Controller.Step(PileSettings.AlderBank.Control, _memory, _readings, NoCommands, _at).Decision;

    [Benchmark]
    public Decision Whole_Tick() => _holding.Tick(_holding.Read(), NoCommands);
}
