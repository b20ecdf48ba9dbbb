using PileController.Control;
using PileController.Control.Readings;

namespace PileController.Rigs.Faults;

/// <summary>Makes sound readings look as the faults on a board would have them.</summary>
internal sealed class ReadingFaults(FaultBoard board)
{
    private readonly SlowBusFault _slowBus = new();
    private IReadOnlyList<Fault> _seen = [];
    private ProbeFault[] _probes = [];
    private bool _busIsSlow;
    private RigReadings? _previous;
    private Instant _previousAt;

    /// <summary>The readings of a tick as they look from outside. Without a fault they are handed through.</summary>
    public RigReadings Distort(RigReadings raw, Instant at)
    {
        IReadOnlyList<Fault> active = board.Active;
        if (!ReferenceEquals(active, _seen))
        {
            Take(active, at);
        }

        RigReadings shown = active.Count == 0 ? raw : Shown(raw, at);
        _previous = raw;
        _previousAt = at;
        return shown;
    }

    private RigReadings Shown(RigReadings raw, Instant at)
    {
        Reading[] readings = raw.AsSpan().ToArray();
        if (_busIsSlow)
        {
            _slowBus.Delay(readings, _previous, _previousAt, at);
        }

        foreach (ProbeFault probe in _probes)
        {
            int place = (int)probe.Channel;
            readings[place] = probe.Distort(readings[place], at);
        }

        return new RigReadings(readings);
    }

    private ProbeFault Begin(Fault fault, Instant at) =>
        new(fault, at, _previous?[fault.Channel!.Value] ?? Reading.NotFitted);

    private void Take(IReadOnlyList<Fault> active, Instant at)
    {
        // A fault that stays keeps what it remembers: a drift goes on from when it began.
        _probes =
        [
            .. active.Where(fault => fault.Channel is not null)
                .Select(fault => _probes.FirstOrDefault(probe => probe.Fault == fault) ?? Begin(fault, at)),
        ];
        bool slow = active.Any(fault => fault.Kind == FaultKind.SlowBus);
        if (slow && !_busIsSlow)
        {
            _slowBus.Begin();
        }

        _busIsSlow = slow;
        _seen = active;
    }
}
