using System.Collections.Concurrent;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Panel;
using PileController.Rigs;
using PileController.Rigs.Faults;

namespace PileController.Tests.Support;

/// <summary>A rig that says what it is told to say, remembers every call, and can break.</summary>
public sealed class FakeRig : IRig, IFaultSwitches
{
    private readonly Lock _gate = new();
    private readonly List<Fault> _faults = [];

    /// <summary>Every call in order: "read" or the outputs.</summary>
    public ConcurrentQueue<string> Calls { get; } = new();

    /// <summary>What the actuators were told last.</summary>
    public Outputs Told { get; private set; } = new(1, 1, 1, true);

    /// <summary>Whether that came with the valve held by a person.</summary>
    public bool ToldHeld { get; private set; }

    public Func<Instant, RigReadings> Reads { get; set; } = _ => RigReadings.None;

    /// <summary>What a reading waits for; a rig that hangs waits for ever.</summary>
    public Task Hangs { get; set; } = Task.CompletedTask;

    public Func<Outputs, Exception?> Refuses { get; set; } = _ => null;

    /// <summary>Calls that overlapped another; the loop must never make one.</summary>
    public int Overlaps { get; private set; }

    public IReadOnlyList<Fault> Active
    {
        get
        {
            lock (_gate)
            {
                return [.. _faults];
            }
        }
    }

    private int _busy;

    public async ValueTask<RigReadings> ReadAsync(Instant at, CancellationToken cancellation)
    {
        Enter("read");
        await Task.Yield();
        try
        {
            await Hangs;
            return Break(Reads(at));
        }
        finally
        {
            Interlocked.Decrement(ref _busy);
        }
    }

    public async ValueTask ApplyAsync(Outputs outputs, CancellationToken cancellation)
    {
        Enter(outputs == Outputs.Safe ? "safe" : $"pump {outputs.PumpDuty}");
        await Task.Yield();
        Interlocked.Decrement(ref _busy);
        if (Refuses(outputs) is { } fault)
        {
            throw fault;
        }

        Told = outputs;
        ToldHeld = false;
    }

    public async ValueTask ApplyHeldAsync(Outputs outputs, CancellationToken cancellation)
    {
        await ApplyAsync(outputs, cancellation);
        ToldHeld = true;
    }

    public void Add(Fault fault)
    {
        lock (_gate)
        {
            _faults.RemoveAll(one => one.Kind == fault.Kind && one.Channel == fault.Channel);
            _faults.Add(fault);
        }
    }

    public void Remove(Fault fault)
    {
        lock (_gate)
        {
            _faults.Remove(fault);
        }
    }

    public void Clear()
    {
        lock (_gate)
        {
            _faults.Clear();
        }
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private void Enter(string call)
    {
        Calls.Enqueue(call);
        if (Interlocked.Increment(ref _busy) > 1)
        {
            Overlaps++;
        }
    }

    private RigReadings Break(RigReadings sound) =>
        Active.Where(fault => fault.Channel is not null)
            .Aggregate(sound, (readings, fault) => readings.With(fault.Channel!.Value, new Reading(0, ReadingQuality.NoAnswer, 0)));
}
