namespace PileController.Control.Decisions;

/// <summary>The actuators a person can take by hand.</summary>
public enum Actuator
{
    /// <summary>Loop pump, duty 0 to 1.</summary>
    Pump = 0,

    /// <summary>Loop valve, opening 0 to 1.</summary>
    Valve = 1,

    /// <summary>Duct blower, duty 0 to 1.</summary>
    Blower = 2,

    /// <summary>Backup heat, 0 off or 1 on.</summary>
    Backup = 3,
}

/// <summary>What the actuators are told to do.</summary>
/// <param name="PumpDuty">0 (off) to 1 (full).</param>
/// <param name="ValveOpening">0 (shut) to 1 (open).</param>
/// <param name="BlowerDuty">0 (off) to 1 (full).</param>
/// <param name="BackupOn">Whether backup heat is called for.</param>
public readonly record struct Outputs(double PumpDuty, double ValveOpening, double BlowerDuty, bool BackupOn)
{
    /// <summary>Everything off and shut: what a rig is told before anything else, and when all else fails.</summary>
    public static Outputs Safe => default;

    /// <summary>The value of one actuator, 0 to 1.</summary>
    public double Of(Actuator actuator) => actuator switch
    {
        Actuator.Pump => PumpDuty,
        Actuator.Valve => ValveOpening,
        Actuator.Blower => BlowerDuty,
        _ => BackupOn ? 1 : 0,
    };
}
