using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Physics.Plants;

namespace PileController.Seasons;

/// <summary>Keeps the score of a season on the true plant, not on what the probes say.</summary>
internal sealed class SeasonScore(ControlSettings settings)
{
    private const double LitC = 50;
    private const double StalledC = 40;
    private const double DayHours = 24;
    private const double UnlitFromDay = 20;

    private readonly NightScore _nights = new(settings.HouseMinimumC);
    private double _hotHours;
    private double _coolHours;
    private double _hours;
    private bool _lit;

    public double ColdDegreeHours { get; private set; }

    public double SetPointDegreeHours { get; private set; }

    public double HoursBelowMinimum { get; private set; }

    public double HoursBelowFloor { get; private set; }

    public double FrostGuardHours { get; private set; }

    /// <summary>Hours in which the battery held off a draw that was wanted.</summary>
    public double BatteryHeldHours { get; private set; }

    /// <summary>Hours in which a trip stopped the water; nobody clears one in a season.</summary>
    public double TrippedHours { get; private set; }

    public double MinHouseC { get; private set; } = double.PositiveInfinity;

    public double? MinActiveZoneC { get; private set; }

    public double? MinTurnsC { get; private set; }

    /// <summary>Day of the first instant at which the active zone has been 50 °C or more for 24 h; null when it never was.</summary>
    public double? LitOnDay { get; private set; }

    /// <summary>First day after lighting at which the active zone has been below 40 °C for 24 h; 20 when it never lit.</summary>
    public double? StalledOnDay { get; private set; }

    /// <summary>How good the evenings' statements were; null before the first night after lighting.</summary>
    public TonightResult? Tonight => _nights.Result;

    /// <summary>Takes in one tick that has just been lived.</summary>
    public void Add(Plant plant, Decision decision, double seconds)
    {
        double hours = seconds / 3600;
        _hours += hours;
        double day = _hours / DayHours;
        double house = plant.HouseC;
        double zone = plant.Heap.ActiveZoneC;
        MinHouseC = Math.Min(MinHouseC, house);
        SetPointDegreeHours += Math.Max(0, decision.HouseSetPointCelsius - house) * hours;
        if (house < settings.HouseMinimumC)
        {
            ColdDegreeHours += (settings.HouseMinimumC - house) * hours;
            HoursBelowMinimum += hours;
        }

        if (decision.Mode == Mode.FrostGuard)
        {
            FrostGuardHours += hours;
        }

        if (decision.Mode == Mode.Tripped)
        {
            TrippedHours += hours;
        }

        if (decision.Curb == Curb.Power)
        {
            BatteryHeldHours += hours;
        }

        _hotHours = zone >= LitC ? _hotHours + hours : 0;
        if (!_lit && _hotHours >= DayHours)
        {
            _lit = true;
            LitOnDay = day;
        }

        _nights.Add(decision, house, _lit);
        if (!_lit && day < UnlitFromDay)
        {
            return;
        }

        MinActiveZoneC = Math.Min(MinActiveZoneC ?? zone, zone);
        double turns = plant.Heap.TurnsShellC;
        MinTurnsC = Math.Min(MinTurnsC ?? turns, turns);
        if (zone < settings.HeapFloorC)
        {
            HoursBelowFloor += hours;
        }

        _coolHours = _lit && zone < StalledC ? _coolHours + hours : 0;
        if (StalledOnDay is null && (!_lit || _coolHours >= DayHours))
        {
            StalledOnDay = _lit ? day : UnlitFromDay;
        }
    }
}
