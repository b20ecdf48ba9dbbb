using BenchmarkDotNet.Attributes;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Benchmarks;

/// <summary>One tick of control, and one tick of the whole pipeline, live: one tick after another from the demo's warm start on.</summary>
[MemoryDiagnoser]
public class StepBenchmarks
{
    private const int Hours = 6;
    private static readonly Command[] NoCommands = [];
    private const long MostTicks = 500_000;
    private readonly List<Moment> _all = [];
    private readonly List<Moment> _steady = [];
    private Holding _holding = null!;
    private long _left;
    private int _next;

    [GlobalSetup]
    public void Setup()
    {
        _holding = Begun();
        double ticks = Hours * 3600 / PileSettings.AlderBank.Control.TickSeconds;
        for (int i = 0; i < ticks; i++)
        {
            Moment moment = new(_holding.Memory, _holding.Read(), _holding.Now);
            _holding.Tick(moment.Readings, NoCommands);
            _all.Add(moment);
            if (IsSteady(moment.Memory, _holding.Memory))
            {
                _steady.Add(moment);
            }
        }
    }

    /// <summary>Ticks between two looks of observer, horizon and outlook.</summary>
    [Benchmark]
    public Decision Control_Step() => Step(_steady);

    /// <summary>All ticks of some hours.</summary>
    [Benchmark]
    public Decision Control_Step_Looks_Too() => Step(_all);

    /// <summary>Ticks of two months; then the demo begins anew, since its weather ends.</summary>
    [Benchmark]
    public Decision Whole_Tick()
    {
        if (--_left <= 0)
        {
            _holding = Begun();
            _left = MostTicks;
        }

        return _holding.Tick(_holding.Read(), NoCommands);
    }

    private static Holding Begun()
    {
        PileSettings settings = PileSettings.AlderBank;
        return new Holding(
            HoldingBuild.Plant(settings), settings.Control, settings.Rig, Demo.Weather(HoldingBuild.Place(settings)),
            HoldingBuild.StandardOffsetMinutes(settings), WarmStart.Shipped().State);
    }

    private static bool IsSteady(Memory before, Memory after) =>
        ReferenceEquals(before.Estimator.Belief, after.Estimator.Belief)
        && before.LookedAtMonotonicMilliseconds == after.LookedAtMonotonicMilliseconds
        && before.Weather.Hour == after.Weather.Hour;

    private Decision Step(List<Moment> moments)
    {
        _next = _next + 1 < moments.Count ? _next + 1 : 0;
        Moment moment = moments[_next];
        return Controller.Step(PileSettings.AlderBank.Control, moment.Memory, moment.Readings, NoCommands, moment.At).Decision;
    }

    private sealed record Moment(Memory Memory, RigReadings Readings, Instant At);
}
