using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;
using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>What pump and blower take from the battery at the levels of a plan.</summary>
internal sealed class PowerTaken
{
    private readonly WaterDrive _drive;
    private readonly double[] _waterW;
    private readonly double[] _airW;

    public PowerTaken(SeasonPlan season)
    {
        _drive = new WaterDrive(season.Control);
        PumpCurve pump = LoopCircuit.Pump(season.Build.Loop);
        double blower = season.Control.BlowerFitted ? season.Build.Heap.Duct.BlowerWatts : 0;
        _waterW = [.. Levels.Water.Select(level => pump.Watts(_drive.Duty(level)))];
        _airW = [.. Levels.Air.Select(level => blower * level * level * level)];
        WaterJ = [.. Levels.Water.Select((level, k) => 3600 * _drive.Share(level) * _waterW[k])];
        AirJ = [.. _airW.Select(w => 3600 * w)];
    }

    /// <summary>Electricity of an hour at each of <see cref="Levels.Water"/>, J.</summary>
    public double[] WaterJ { get; }

    /// <summary>Electricity of an hour at each of <see cref="Levels.Air"/>, J.</summary>
    public double[] AirJ { get; }

    /// <summary>Electricity of an hour at these levels, J.</summary>
    public double OfHourJ(double water, double air) =>
        Levels.Between(Levels.Water, WaterJ, water) + Levels.Between(Levels.Air, AirJ, air);

    /// <summary>
    /// Power while both run, W: where an hour is shared between running and standing, more than its mean. What stands counts
    /// as if it ran gently: what the battery bears would else go up and down with every hour that is begun or left out, and
    /// its worth with it, without end.
    /// </summary>
    public double RunningW(double water, double air) => Running(Levels.Water, _waterW, water) + Running(Levels.Air, _airW, air);

    private static double Running(double[] levels, double[] watts, double level) =>
        Levels.Between(levels, watts, Math.Max(level, levels[1]));
}
