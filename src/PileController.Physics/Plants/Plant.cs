using PileController.Physics.Heaps;
using PileController.Physics.Hydraulics;
using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Plants;

/// <summary>
/// The whole holding: heap, loop, house, battery and weather. House, loop and the bed round the pipe take quick steps;
/// the body of the heap takes one slow step a minute.
/// </summary>
public sealed class Plant
{
    /// <summary>Length of a quick step that the shipped holding is made with, s.</summary>
    public const double UsualQuickSeconds = 10;

    private const double MostSeconds = 366 * 86_400.0;

    private const double FrictionStepKelvin = 4;

    // A valve less open than this lets nothing through.
    private const double ShutOpening = 0.03;

    // Share of the exhaust's heat that a condenser in the house gives to it (common practice, no source).
    private const double CondenserYield = 0.6;

    // It yields less when the exhaust is less than this above the house, and nothing when it is no warmer
    // (common practice, no source).
    private const double CondenserFullKelvin = 20;

    private readonly PlantBuild _build;
    private readonly WeatherSeries _weather;
    private readonly Loop _loop;
    private readonly Dwelling _house;
    private readonly Battery _battery;
    private readonly LoopHydraulics _hydraulics;
    private readonly double _ductWPerK;
    private readonly double _quickSeconds;
    private long _utcMilliseconds;
    private double _sinceSlowSeconds;
    private double _blownM3;
    private PlantInputs _flowFor = new(-1, 0, 0, false, 0);
    private double _flowAtC;

    /// <summary>Builds a plant.</summary>
    /// <param name="build">How it is built.</param>
    /// <param name="weather">The weather it stands in.</param>
    /// <param name="state">A stored state to go on from; see <see cref="Fresh"/>.</param>
    /// <param name="quickSeconds">
    /// Longest quick step, s (10 to 60). Where the bed round the pipe is too thin for it, shorter ones are taken.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">The quick step is out of its range.</exception>
    public Plant(PlantBuild build, WeatherSeries weather, PlantState state, double quickSeconds = UsualQuickSeconds)
    {
        Require.Within(quickSeconds, UsualQuickSeconds, Heap.SlowStepSeconds, "s");
        _quickSeconds = quickSeconds;
        _build = build;
        _weather = weather;
        Heap = new Heap(build.Heap, state.Heap);
        _loop = new Loop(build.Loop, build.Heap.Coil, state.Loop, state.LoopLedger);
        _house = new Dwelling(build.House, state.House, state.HouseLedger);
        _battery = new Battery(build.Power, state.BatteryCharge, state.BatteryVolts);
        _hydraulics = new LoopHydraulics(LoopCircuit.Pump(build.Loop), LoopCircuit.Runs(build.Loop, build.Heap.Coil));
        _utcMilliseconds = state.UtcMilliseconds;
        Sky = weather.At(_utcMilliseconds);
        _ductWPerK = DuctBed.ConductanceWPerK(build.Heap.Duct);
        PlantMotion motion = state.Motion ?? new PlantMotion(0, 0, 0, _house.AirC, 0);
        FlowLitresPerMinute = motion.FlowLitresPerMinute;
        PumpW = motion.PumpW;
        BlowerW = motion.BlowerW;
        DuctAirC = motion.DuctAirC;
        AirDrawW = motion.AirDrawW;
    }

    /// <summary>The heap.</summary>
    public Heap Heap { get; }

    /// <summary>The weather of the last step.</summary>
    public WeatherSample Sky { get; private set; }

    /// <summary>Wall time, ms since 1970-01-01T00:00Z.</summary>
    public long UtcMilliseconds => _utcMilliseconds;

    /// <summary>House air, °C.</summary>
    public double HouseC => _house.AirC;

    /// <summary>House floor, °C.</summary>
    public double FloorC => _house.FloorC;

    /// <summary>Water leaving the heap, °C.</summary>
    public double SupplyC => _loop.SupplyC;

    /// <summary>Water coming back to the heap, °C.</summary>
    public double ReturnC => _loop.ReturnC;

    /// <summary>Tank water, °C.</summary>
    public double TankC => _loop.TankC;

    /// <summary>The coldest water in the lines outside, °C.</summary>
    public double ColdestLineC => _loop.ColdestLineC;

    /// <summary>Loop flow, L/min.</summary>
    public double FlowLitresPerMinute { get; private set; }

    /// <summary>Electric power of the pump, W.</summary>
    public double PumpW { get; private set; }

    /// <summary>Electric power of the blower, W.</summary>
    public double BlowerW { get; private set; }

    /// <summary>Air leaving the ducts, °C.</summary>
    public double DuctAirC { get; private set; }

    /// <summary>Relative humidity of the house air, %. A stand-in (<see cref="HouseAir"/>).</summary>
    public double HouseHumidityPercent => HouseAir.HumidityPercent(_build, HouseC, Sky, BlowerW > 0);

    /// <summary>Carbon dioxide in the house air, ppm. A stand-in (<see cref="HouseAir"/>).</summary>
    public double HouseCarbonDioxidePpm => HouseAir.CarbonDioxidePpm(_build, HouseC, Heap.ActiveZoneC, Sky, BlowerW > 0);

    /// <summary>Heat the air takes from the heap now, W.</summary>
    public double AirDrawW { get; private set; }

    /// <summary>Battery voltage, V.</summary>
    public double BatteryV => _build.Power.BatteryWattHours > 0 ? _battery.Volts : 12.6;

    /// <summary>Sums of the loop.</summary>
    public LoopLedger LoopLedger => _loop.Ledger;

    /// <summary>Sums of the house.</summary>
    public DwellingLedger HouseLedger => _house.Ledger;

    /// <summary>Heat stored in the loop's water above 0 °C, J.</summary>
    public double LoopStoredJ => _loop.StoredJ;

    /// <summary>Heat stored in the house above 0 °C, J.</summary>
    public double HouseStoredJ => _house.StoredJ;

    /// <summary>True at a whole minute of the plant, when <see cref="Snapshot"/> may be taken.</summary>
    public bool AtSlowStep => _sinceSlowSeconds <= 0;

    /// <summary>A plant just built, with water and house at the temperature of the air.</summary>
    /// <param name="build">How it is built.</param>
    /// <param name="weather">The weather it stands in.</param>
    /// <param name="utcMilliseconds">When it is built.</param>
    public static PlantState Fresh(PlantBuild build, WeatherSeries weather, long utcMilliseconds)
    {
        double outside = Dwelling.FreshC(weather.At(utcMilliseconds).OutsideC);
        return new PlantState
        {
            UtcMilliseconds = utcMilliseconds,
            Heap = new Heap(build.Heap).Snapshot(),
            Loop = Loop.Filled(outside),
            House = Dwelling.Fresh(build.House, outside),
        };
    }

    /// <summary>All it remembers.</summary>
    /// <exception cref="InvalidOperationException">The plant is not at a whole minute.</exception>
    public PlantState Snapshot() => !AtSlowStep
        ? throw new InvalidOperationException("A plant can be stored at a whole minute only.")
        : new PlantState
        {
            UtcMilliseconds = _utcMilliseconds,
            Heap = Heap.Snapshot(),
            Loop = _loop.Snapshot(),
            LoopLedger = _loop.Ledger,
            House = _house.Snapshot(),
            HouseLedger = _house.Ledger,
            Motion = new PlantMotion(FlowLitresPerMinute, PumpW, BlowerW, DuctAirC, AirDrawW),
            BatteryCharge = _battery.Charge,
            BatteryVolts = _battery.Volts,
        };

    /// <summary>Lets the plant live for a while.</summary>
    /// <param name="inputs">What the actuators do.</param>
    /// <param name="seconds">How long, s; above 0, at most a year. Longer than a quick step is cut into equal parts.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is out of its range.</exception>
    public void Step(in PlantInputs inputs, double seconds)
    {
        if (!(seconds > 0 && seconds <= MostSeconds))
        {
            throw new ArgumentOutOfRangeException(
                nameof(seconds), seconds, $"seconds is {seconds}; allowed is above 0 and at most {MostSeconds} (a year).");
        }

        double quick = Math.Max(UsualQuickSeconds, Math.Min(_quickSeconds, Heap.LongestQuickSeconds));
        int parts = (int)Math.Ceiling(seconds / quick);
        long from = _utcMilliseconds;
        for (int i = 0; i < parts; i++)
        {
            // Counted from the start of the whole step: parts of a broken millisecond must not wear the clock away.
            StepQuick(inputs, seconds / parts, from + (long)Math.Round(seconds * 1000 * (i + 1) / parts));
        }
    }

    private void StepQuick(in PlantInputs inputs, double seconds, long utcMilliseconds)
    {
        _utcMilliseconds = utcMilliseconds;
        WeatherSample sky = _weather.At(_utcMilliseconds);
        Sky = sky;
        bool dead = _battery.Empty;
        Flow(dead ? inputs with { PumpDuty = 0 } : inputs);
        double blower = dead ? 0 : inputs.BlowerDuty;
        double groundC = _build.House.GroundC;
        double roundLinesC = groundC + (_build.Loop.LineExposure * (sky.OutsideC - groundC));
        (double coilJ, double drumJ, double heatJ) =
            _loop.Step(seconds, FlowLitresPerMinute, Heap, _house.AirC, roundLinesC);
        double ductJ = Ducts(seconds, blower);
        Heap.StepQuick(seconds, coilJ, drumJ, ductJ);
        double throughW = _build.Heap.Duct.ThroughHeap && blower > 0 ? Heap.ThroughAirW : 0;
        double condenser = CondenserYield * Math.Clamp((DuctAirC - _house.AirC) / CondenserFullKelvin, 0, 1);
        double backupW = inputs.BackupOn ? _build.House.BackupWatts : 0;
        AirDrawW = (ductJ / seconds) + throughW;
        _house.Step(
            seconds, heatJ + ductJ + (seconds * ((condenser * throughW) + backupW)), sky.OutsideC, sky.SunWPerM2);
        BlowerW = _build.Heap.Duct.BlowerWatts * blower * blower * blower;
        _battery.Step(seconds, PumpW + BlowerW, sky.SunWPerM2);

        _sinceSlowSeconds += seconds;
        if (_sinceSlowSeconds >= Heap.SlowStepSeconds - 1e-6)
        {
            Heap.StepSlow(_sinceSlowSeconds, new HeapSite(
                sky.OutsideC, sky.Humidity, sky.WindMPerS, _build.House.GroundC, _blownM3 / _sinceSlowSeconds));
            _sinceSlowSeconds = 0;
            _blownM3 = 0;
        }
    }

    private double Ducts(double seconds, double blower)
    {
        double flowM3PerS = blower * _build.Heap.Duct.FullFlowM3PerS;
        if (flowM3PerS <= 0)
        {
            DuctAirC = _house.AirC;
            return 0;
        }

        if (_build.Heap.Duct.ThroughHeap)
        {
            _blownM3 += flowM3PerS * seconds;
            DuctAirC = Heap.ActiveZoneC;
            return 0;
        }

        double carried = flowM3PerS * DuctBed.AirJPerM3K;
        double taken = 1 - Portable.Exp(-_ductWPerK / carried);

        // The shell cools while the air passes; with small shells that matters within a step.
        double given = taken * (Heap.DuctShellC - _house.AirC) / (1 + (seconds * carried * taken / Heap.DuctShellJPerK));
        DuctAirC = _house.AirC + given;
        return seconds * carried * given;
    }

    // Flow is found anew when an actuator moves or the water has warmed or cooled enough to matter to friction. It is
    // found at a round temperature, so that it hangs on the plant's state alone and not on when it was last found.
    private void Flow(in PlantInputs inputs)
    {
        double waterC = FrictionStepKelvin * Math.Round(_loop.ReturnC / FrictionStepKelvin);
        if (inputs.PumpDuty == _flowFor.PumpDuty && inputs.ValveOpening == _flowFor.ValveOpening
            && inputs.FlowShareLost == _flowFor.FlowShareLost && waterC == _flowAtC)
        {
            return;
        }

        _flowFor = inputs;
        _flowAtC = waterC;
        double opening = _build.Loop.ValveTravelSeconds > 0 ? inputs.ValveOpening : 1;
        double free = opening < ShutOpening
            ? 0
            : _hydraulics.FlowLitresPerMinute(inputs.PumpDuty, waterC, Throttle.LossK(Math.Min(1, opening)));
        FlowLitresPerMinute = free * (1 - inputs.FlowShareLost);
        PumpW = _hydraulics.Watts(inputs.PumpDuty);
    }
}
