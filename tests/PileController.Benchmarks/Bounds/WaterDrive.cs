using PileController.Control;
using PileController.Control.Regulation;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// What pump and valve do at a level of the water, by how the pump is driven. A pump that knows all or nothing, and one beside
/// a throttling valve, run a share of the hour: such a valve has so little to say in a loop whose pipe loses most of the head
/// that the controller's throttled pump lives by runs as well.
/// </summary>
internal sealed class WaterDrive(ControlSettings settings)
{
    // That of the controller's frost guard.
    private const double GuardDuty = 0.4;

    private readonly bool _byRuns = settings.Drive != PumpDrive.Duty;
    private readonly double _runDuty = PumpRegulator.RunDuty(settings);

    /// <summary>Level below which the hour is shared between running and standing, 0 to 1.</summary>
    public double LeastLevel => _byRuns ? 1 : ControlSettings.UsualLeastDuty;

    /// <summary>The pump's duty at a level that is run at, 0 to 1.</summary>
    public double Duty(double level) => _byRuns && level > 0 ? _runDuty : level;

    /// <summary>The pump's duty while lines near frost have their water moved, beside what the plan runs, 0 to 1.</summary>
    public double Guarded(double pump) => _byRuns ? _runDuty : Math.Max(pump, GuardDuty);

    /// <summary>Share of an hour of a level for which the pump runs.</summary>
    public double Share(double level) => _byRuns ? level : 1;
}
