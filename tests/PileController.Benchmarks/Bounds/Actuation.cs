using PileController.Control;
using PileController.Physics.Plants;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// Pump, valve and blower under a schedule, with the holding's own rules on the true plant: nothing is drawn before the
/// heap has lit, the battery holds air and then water back, and lines near frost move water whatever the plan says.
/// </summary>
internal sealed class Actuation(ControlSettings settings, double valveTravelSeconds)
{
    /// <summary>Least duty of the blower: the controller's own.</summary>
    public const double LeastBlowerDuty = 0.3;

    // Air warmer than this freezes no line.
    private const double FrostPossibleC = 0.5;

    private readonly WaterDrive _drive = new(settings);
    private readonly DutyTrack _pump = new(new WaterDrive(settings).LeastLevel, settings.PumpLeastRunSeconds, settings);
    private readonly DutyTrack _blower = new(LeastBlowerDuty, settings.LeastRunSeconds, settings);
    private readonly Guard _frost = new("lineFrost", settings);
    private readonly Guard _low = new("batteryLow", settings);
    private readonly Guard _empty = new("batteryEmpty", settings);
    private readonly Guard _hotHouse = new("houseHot", settings);
    private readonly Guard _hotSupply = new("supplyHot", settings);
    private double _valve = valveTravelSeconds > 0 ? 0 : 1;

    /// <summary>True while the frost guard moves the water.</summary>
    public bool Guarding { get; private set; }

    /// <summary>True while the battery holds the blower back, or pump and blower.</summary>
    public bool HeldByBattery => _low.Acting || _empty.Acting;

    public PlantInputs Next(Plant plant, Schedule plan, int hour, double intoHour, bool lit, double seconds)
    {
        double coldest = plant.Sky.OutsideC > FrostPossibleC
            ? double.PositiveInfinity
            : Math.Min(plant.SupplyC, plant.ReturnC);
        Guarding = _frost.Judge(coldest, seconds);
        bool all = _empty.Judge(plant.BatteryV, seconds) | _hotHouse.Judge(plant.HouseC, seconds);
        bool water = lit && !(all | _hotSupply.Judge(plant.SupplyC, seconds));
        bool air = lit && settings.BlowerFitted && !(all | _low.Judge(plant.BatteryV, seconds));
        double pump = _drive.Duty(Duty(_pump, plan.Water, hour, intoHour, water, seconds));
        double blower = Duty(_blower, plan.Air, hour, intoHour, air, seconds);
        if (Guarding)
        {
            blower = pump > 0 ? blower : 0;
            pump = _drive.Guarded(pump);
        }

        return new PlantInputs(pump, Valve(pump > 0 ? 1 : 0, seconds), blower, false, 0);
    }

    private static double Duty(DutyTrack track, double[] levels, int hour, double intoHour, bool allowed, double seconds)
    {
        if (!allowed)
        {
            track.Stop();
            return 0;
        }

        // A part hour lies against the running hour beside it, so that the pump starts once.
        bool late = hour + 1 < levels.Length && levels[hour + 1] > 0 && (hour == 0 || levels[hour - 1] <= 0);
        return track.Next(levels[hour], intoHour, late, seconds);
    }

    private double Valve(double target, double seconds)
    {
        if (valveTravelSeconds <= 0)
        {
            return 1;
        }

        double reach = seconds / valveTravelSeconds;
        double before = _valve;
        _valve = Math.Clamp(target, before - reach, before + reach);
        double moving = Math.Abs(_valve - before) / reach;
        return (moving * 0.5 * (before + _valve)) + ((1 - moving) * _valve);
    }
}
