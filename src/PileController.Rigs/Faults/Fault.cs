using PileController.Control.Readings;

namespace PileController.Rigs.Faults;

/// <summary>Ways a rig goes wrong.</summary>
public enum FaultKind
{
    /// <summary>A broken wire: the probe does not answer.</summary>
    Open,

    /// <summary>A shorted bus: all-zero data whose checksum fits.</summary>
    Short,

    /// <summary>The probe repeats its last value.</summary>
    Stuck,

    /// <summary>The probe wanders off, <see cref="Fault.Size"/> units an hour.</summary>
    Drift,

    /// <summary>Single wild values, <see cref="Fault.Size"/> units high, about one tick in six.</summary>
    Spike,

    /// <summary>The pump takes its command and does not turn.</summary>
    DeadPump,

    /// <summary>The loop is blocked: <see cref="Fault.Size"/> is the share of the flow that is lost, 0 to 1.</summary>
    BlockedLine,

    /// <summary>The valve stays where it is.</summary>
    ValveJammed,

    /// <summary>The probe bus answers late: readings are one to three ticks old.</summary>
    SlowBus,

    /// <summary>The probe was taken out of its place and sits in something else, at <see cref="Fault.Size"/> °C: a hand 33, ice 0.</summary>
    TakenOut,
}

/// <summary>One fault put into a rig on purpose, by settings or from the demo.</summary>
/// <param name="Kind">What goes wrong.</param>
/// <param name="Channel">Which probe, for the faults of a single probe; null for the others.</param>
/// <param name="Size">Meaning by kind: units an hour, units, or a share; 0 where the kind needs none.</param>
public sealed record Fault(FaultKind Kind, Channel? Channel = null, double Size = 0);
