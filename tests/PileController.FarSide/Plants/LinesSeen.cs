namespace PileController.FarSide.Plants;

/// <summary>What the controller's outputs show at their lines.</summary>
/// <param name="PumpDuty">Share of full power at the pump, 0 to 1.</param>
/// <param name="BlowerDuty">The same at the blower.</param>
/// <param name="ValveOpens">Whether the line that runs the motor valve open is on.</param>
/// <param name="ValveShuts">Whether the line that runs it shut is on.</param>
public readonly record struct LinesSeen(double PumpDuty, double BlowerDuty, bool ValveOpens, bool ValveShuts)
{
    /// <summary>Nothing is on.</summary>
    public static LinesSeen Off => default;
}
