using PileController.Physics.Fluids;

namespace PileController.Physics.Heaps;

/// <summary>
/// The heap as the simulated rig has it: radial shells, a sleeve of finer cells round the buried pipe, a drum in the
/// middle. Microbes, air and water move by explicit steps, conduction by an implicit one; energy and mass move by
/// fluxes that are summed one by one in <see cref="Ledger"/>.
/// </summary>
/// <remarks>
/// What it leaves out: differences with height, rain, ice in the pores, settling, and steam that condenses in the
/// cooler rind on its way out (all the vapour leaves, so water loss is on the high side).
/// </remarks>
public sealed partial class Heap
{
    /// <summary>Length of a slow step, s: microbes, air and conduction between shells.</summary>
    public const double SlowStepSeconds = 60;

    // Share of its temperature above the water's that the bed against the pipe may lose in one quick step.
    private const double LargestQuickShare = 0.5;

    private readonly HeapBuild _build;
    private readonly RadialGrid _grid;
    private readonly int _shells;
    private readonly int _cells;
    private readonly int _coilShell;
    private readonly int _ductShell;
    private readonly bool _drum;
    private readonly double _bedM3;
    private readonly double[] _volumeM3;
    private readonly double[] _pathM;
    private readonly double[] _enthalpyJ;
    private readonly double[] _fastKg;
    private readonly double[] _slowKg;
    private readonly double[] _inertKg;
    private readonly double[] _waterKg;
    private readonly double[] _temperatureC;
    private readonly double[] _capacityJPerK;
    private readonly double[] _conductivity;
    private readonly int[] _order;
    private readonly Chain _body;
    private readonly Sleeve? _sleeve;
    private double _drumC;
    private double _throughAirW;
    private double _ageSeconds;
    private HeapLedger _ledger;

    /// <summary>Builds a heap.</summary>
    /// <param name="build">How it is built.</param>
    /// <param name="state">A stored state to go on from, or null for a fresh heap.</param>
    /// <exception cref="ArgumentException">The stored state has not the cells of this build.</exception>
    public Heap(HeapBuild build, HeapState? state = null)
    {
        _build = build;
        _drum = build.DrumLitres > 0;
        double inner = _drum ? Math.Sqrt(build.DrumLitres * 0.001 / (Math.PI * build.HeightM)) : 0;
        _grid = new RadialGrid(inner, build.RadiusM, build.HeightM, build.Shells);
        _shells = build.Shells;
        _coilShell = _grid.ShellAt(build.Coil.RadiusM);
        _ductShell = _grid.ShellAt(build.Duct.RadiusM);
        _sleeve = build.Coil.LengthM > 0 ? new Sleeve(build.Coil, _grid.VolumeM3[_coilShell]) : null;
        int sleeveCells = _sleeve is null ? 0 : Sleeve.Rings;
        _cells = _shells + sleeveCells;
        _volumeM3 = new double[_cells];
        _pathM = new double[_cells];
        for (int i = 0; i < _shells; i++)
        {
            _volumeM3[i] = _grid.VolumeM3[i];
            _pathM[i] = build.HeightM + (build.RadiusM - _grid.CentreM[i]);
        }

        for (int i = 0; i < sleeveCells; i++)
        {
            _volumeM3[_shells + i] = _sleeve!.VolumeM3[i];
            _pathM[_shells + i] = _pathM[_coilShell];
            _volumeM3[_coilShell] -= _sleeve.VolumeM3[i];
        }

        _bedM3 = Sum(_volumeM3);
        _body = new Chain(_shells + (_drum ? 1 : 0));
        _capacityJPerK = new double[_cells];
        _conductivity = new double[_cells];
        _order = new int[_cells];
        for (int i = 0; i < _cells; i++)
        {
            _order[i] = i;
        }

        HeapState start = state ?? Fresh();
        RequireCells(start.EnthalpyJ, nameof(start.EnthalpyJ));
        RequireCells(start.FastKg, nameof(start.FastKg));
        RequireCells(start.SlowKg, nameof(start.SlowKg));
        RequireCells(start.InertKg, nameof(start.InertKg));
        RequireCells(start.WaterKg, nameof(start.WaterKg));
        _enthalpyJ = [.. start.EnthalpyJ];
        _fastKg = [.. start.FastKg];
        _slowKg = [.. start.SlowKg];
        _inertKg = [.. start.InertKg];
        _waterKg = [.. start.WaterKg];
        _temperatureC = new double[_cells];
        _drumC = start.DrumC;
        _throughAirW = start.ThroughAirW;
        _ageSeconds = start.AgeSeconds;
        _ledger = start.Ledger;
        RefreshBed();
        Sort();
    }

    /// <summary>The sums since the heap was built.</summary>
    public HeapLedger Ledger => _ledger;

    /// <summary>How the shells lie.</summary>
    public RadialGrid Grid => _grid;

    /// <summary>Temperature of the bed against the pipe, °C; that of the shell where there is no pipe.</summary>
    public double WallC => _sleeve is null ? _temperatureC[_coilShell] : _temperatureC[_shells];

    /// <summary>Conductance from the bed cell against the pipe to the pipe's outer face, W/K (0 without a coil).</summary>
    public double WallWPerK => _sleeve?.WallWPerK ?? 0;

    /// <summary>
    /// Longest quick step that lets the bed against the pipe come near the water's temperature without passing it, s.
    /// The water takes its heat at the start of the step, so a thin bed allows short ones only.
    /// </summary>
    public double LongestQuickSeconds =>
        _sleeve is null ? SlowStepSeconds : LargestQuickShare * _capacityJPerK[_shells] / _sleeve.WallWPerK;

    /// <summary>Temperature a few centimetres from the pipe, °C.</summary>
    public double NearTurnsC => _sleeve is null ? _temperatureC[_coilShell] : _temperatureC[_cells - 1];

    /// <summary>Whether a drum is buried.</summary>
    public bool HasDrum => _drum;

    /// <summary>Temperature of the drum water, °C.</summary>
    public double DrumC => _drumC;

    /// <summary>Heat capacity of the drum water, J/K.</summary>
    public double DrumJPerK => _build.DrumLitres * Stuff.WaterJPerKgK;

    /// <summary>Heat that the blower draws out with air through the heap, W, as of the last slow step.</summary>
    public double ThroughAirW => _throughAirW;

    /// <summary>Mean temperature of the hottest half of the volume, °C.</summary>
    public double ActiveZoneC { get; private set; }

    /// <summary>Mean temperature of the shell that holds the turns, pipe sleeve included, °C.</summary>
    public double TurnsShellC { get; private set; }

    /// <summary>Temperature of the shell the ducts lie in, °C.</summary>
    public double DuctShellC => _temperatureC[_ductShell];

    /// <summary>Heat capacity of that shell, J/K.</summary>
    public double DuctShellJPerK => _capacityJPerK[_ductShell];

    /// <summary>Bed temperature at a distance from the axis, °C.</summary>
    public double AtRadiusC(double radiusM) => _grid.At(radiusM, _temperatureC.AsSpan(0, _shells));

    /// <summary>Share of water in the whole body, wet basis.</summary>
    public double MoistureFraction
    {
        get
        {
            double water = Sum(_waterKg);
            return water / (water + Sum(_fastKg) + Sum(_slowKg) + Sum(_inertKg));
        }
    }

    /// <summary>Dry matter left, kg.</summary>
    public double DryKg => Sum(_fastKg) + Sum(_slowKg) + Sum(_inertKg);

    /// <summary>Water left, kg.</summary>
    public double WaterKg => Sum(_waterKg);

    /// <summary>Enthalpy of body and drum above 0 °C, J.</summary>
    public double StoredJ => Sum(_enthalpyJ) + DrumJ;

    private double DrumJ => _drum ? DrumJPerK * _drumC : 0;

    /// <summary>All it remembers. Taken just after a slow step, a heap built from it goes on to the same bits.</summary>
    public HeapState Snapshot() => new()
    {
        EnthalpyJ = [.. _enthalpyJ],
        FastKg = [.. _fastKg],
        SlowKg = [.. _slowKg],
        InertKg = [.. _inertKg],
        WaterKg = [.. _waterKg],
        DrumC = _drumC,
        ThroughAirW = _throughAirW,
        AgeSeconds = _ageSeconds,
        Ledger = _ledger,
    };

    private HeapState Fresh()
    {
        double dry = _build.WetMassKg * (1 - _build.MoistureFraction);
        double water = _build.WetMassKg * _build.MoistureFraction;
        double t = _build.BuildTemperatureC;
        double[] Share(double kg) => [.. _volumeM3.Select(v => kg * v / _bedM3)];
        double[] waterKg = Share(water);
        double[] dryKg = Share(dry);
        return new HeapState
        {
            FastKg = Share(dry * _build.FastFraction),
            SlowKg = Share(dry * _build.SlowFraction),
            InertKg = Share(dry * (1 - _build.FastFraction - _build.SlowFraction)),
            WaterKg = waterKg,
            EnthalpyJ = [.. waterKg.Zip(dryKg, (w, d) => ((w * Stuff.WaterJPerKgK) + (d * Stuff.SolidsJPerKgK)) * t)],
            DrumC = t,
            Ledger = default,
        };
    }

    private void RequireCells(double[] values, string name)
    {
        if (values.Length != _cells)
        {
            throw new ArgumentException($"The stored heap has {values.Length} cells of {name}; this build has {_cells}.", name);
        }
    }

    private static double Sum(double[] values)
    {
        double sum = 0;
        foreach (double value in values)
        {
            sum += value;
        }

        return sum;
    }

    private static double SaturationPa(double celsius) => MoistAir.SaturationPressureFastPa(Math.Clamp(celsius, -40, 95));
}
