namespace PileController.Rigs.Simulated;

/// <summary>What the actuators truly do, after faults and travel, as the plant feels it.</summary>
/// <param name="PumpDuty">0 to 1.</param>
/// <param name="ValveOpening">0 to 1.</param>
/// <param name="BlowerDuty">0 to 1.</param>
/// <param name="BackupOn">Whether backup heat runs.</param>
/// <param name="FlowShareLost">Share of the loop's free passage that is blocked, 0 to 1.</param>
public readonly record struct ActuatorState(
    double PumpDuty, double ValveOpening, double BlowerDuty, bool BackupOn, double FlowShareLost);

/// <summary>The far side of the simulated rig: heap, house, loop, weather and battery.</summary>
public interface IPlant
{
    /// <summary>Lets the plant live for a while with the actuators so.</summary>
    void Advance(in ActuatorState actuators, double seconds);

    /// <summary>The true value of what a probe measures where it sits, in the channel's unit (noise, lag and grain are the rig's affair).</summary>
    double TrueValue(ProbeFit probe);
}
