using PileController.Control.Decisions;

namespace PileController.Rigs.Hardware.Loads;

/// <summary>One actuator, however it is driven. Off from its first instant.</summary>
internal interface ILoad
{
    /// <summary>True when the last deed failed.</summary>
    bool IsFailing { get; }

    /// <summary>Time after which it wants to be driven again, s, when that may be before the next second; else null.</summary>
    double? DueSeconds { get; }

    /// <summary>Takes from what all actuators are told what it is told itself.</summary>
    /// <param name="outputs">What all are told.</param>
    /// <param name="valveIsHeld">Whether a person holds the valve, so that its opening is meant as told.</param>
    void Want(in Outputs outputs, bool valveIsHeld);

    /// <summary>Brings the actuator to what is wanted at this moment; called every second at least.</summary>
    /// <param name="seconds">Time since the rig began, s, by a clock that is never set.</param>
    /// <param name="news">Told once of what a person should look at while the actuator can go on.</param>
    /// <returns>What went wrong, or null.</returns>
    RigFaultException? Drive(double seconds, List<string> news);

    /// <summary>Switches the actuator off for good.</summary>
    /// <returns>What went wrong, or null.</returns>
    RigFaultException? SwitchOff();
}
