using PileController.Physics.Hydraulics;

namespace PileController.Parts;

/// <summary>A water loop with what powers its pump, as its file tells it.</summary>
internal sealed record LoopPart
{
    public double WaterC { get; init; } = 30;

    public double StaticLiftM { get; init; }

    public double ValveOpen { get; init; } = 1;

    public double Duty { get; init; } = 1;

    public double HoursPerDay { get; init; } = 24;

    public double PanelWatts { get; init; }

    public double BatteryWattHours { get; init; }

    public double SunHours { get; init; } = 2;

    public IReadOnlyList<RunPart> Runs { get; init; } = [];

    /// <summary>The runs, the lift on the first of them.</summary>
    public PipeRun[] PipeRuns() => [.. Runs.Select((run, i) => run.Run(i == 0 ? StaticLiftM : 0))];

    /// <summary>Panel, battery and sun.</summary>
    public DayPower Power => new(PanelWatts, BatteryWattHours, SunHours);
}
