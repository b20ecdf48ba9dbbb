using PileController.Control.Decisions;
using PileController.Control.Readings;

namespace PileController.Rigs.Simulated;

/// <summary>Where one probe's lag stands.</summary>
/// <param name="Channel">Which probe.</param>
/// <param name="Value">What it would show without noise, offset and grain, in the channel's unit.</param>
public readonly record struct LaggedProbe(Channel Channel, double Value);

/// <summary>What the flow meter has counted since it was last looked at.</summary>
/// <param name="Pulses">Whole pulses.</param>
/// <param name="Seconds">Over how long, s.</param>
/// <param name="Remainder">Part of a pulse still in the wheel, 0 to 1.</param>
/// <param name="Seen">Whether it has been looked at, so that the next count begins afresh.</param>
public readonly record struct MeterWindow(long Pulses, double Seconds, double Remainder, bool Seen);

/// <summary>
/// All a simulated rig carries from tick to tick (the plant and the faults keep their own). Written as JSON and
/// read back, the run goes on with the same bits.
/// </summary>
public sealed record SimulatedRigState
{
    /// <summary>How many times the rig was advanced; the noise hangs on it.</summary>
    public required long Tick { get; init; }

    /// <summary>What the actuators were last told.</summary>
    public required Outputs Outputs { get; init; }

    /// <summary>Where the valve stands, 0 (shut) to 1 (open).</summary>
    public required double ValvePosition { get; init; }

    /// <summary>Where the valve is believed to stand; null in a state stored without it, which takes it for the truth.</summary>
    public double? ValveBelieved { get; init; }

    /// <summary>Time since the valve was last surely at a stop, s.</summary>
    public double ValveSinceHomedSeconds { get; init; }

    /// <summary>The flow meter.</summary>
    public required MeterWindow Meter { get; init; }

    /// <summary>The lags of the fitted probes but the flow meter, in the order of the settings.</summary>
    public required IReadOnlyList<LaggedProbe> Probes { get; init; }
}
