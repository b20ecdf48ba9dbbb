using PileController.Physics.Fluids;
using PileController.Physics.Heaps;

namespace PileController.Benchmarks.Bounds;

/// <summary>Where the cells of a heap lie and how heat passes between them, as the heap has it.</summary>
internal sealed class HeapForm
{
    private const double CoverWPerMK = 0.08;
    private const double GroundM2KPerW = 1.5;
    private readonly HeapBuild _build;
    private readonly RadialGrid _grid;
    private readonly Sleeve? _sleeve;

    public HeapForm(HeapBuild build)
    {
        _build = build;
        HasDrum = build.DrumLitres > 0;
        double inner = HasDrum ? Math.Sqrt(build.DrumLitres * 0.001 / (Math.PI * build.HeightM)) : 0;
        _grid = new RadialGrid(inner, build.RadiusM, build.HeightM, build.Shells);
        Shells = build.Shells;
        CoilShell = _grid.ShellAt(build.Coil.RadiusM);
        DuctShell = _grid.ShellAt(build.Duct.RadiusM);
        _sleeve = build.Coil.LengthM > 0 ? new Sleeve(build.Coil, _grid.VolumeM3[CoilShell]) : null;
        Cells = Shells + (_sleeve is null ? 0 : Sleeve.Rings);
        VolumeM3 = new double[Cells];
        PathM = new double[Cells];
        for (int i = 0; i < Shells; i++)
        {
            VolumeM3[i] = _grid.VolumeM3[i];
            PathM[i] = build.HeightM + (build.RadiusM - _grid.CentreM[i]);
        }

        for (int i = Shells; i < Cells; i++)
        {
            VolumeM3[i] = _sleeve!.VolumeM3[i - Shells];
            PathM[i] = PathM[CoilShell];
            VolumeM3[CoilShell] -= VolumeM3[i];
        }

        BedM3 = VolumeM3.Sum();
        DrumJPerK = build.DrumLitres * Stuff.WaterJPerKgK;
    }

    public int Shells { get; }

    public int Cells { get; }

    public int CoilShell { get; }

    public int DuctShell { get; }

    public bool HasDrum { get; }

    public bool HasSleeve => _sleeve is not null;

    /// <summary>The cell the pipe lies in: the innermost ring, or the shell where there is no pipe.</summary>
    public int WallCell => HasSleeve ? Shells : CoilShell;

    public double BedM3 { get; }

    public double DrumJPerK { get; }

    public double[] VolumeM3 { get; }

    public double[] PathM { get; }

    public static Cell At(HeapState state, int i) =>
        new(state.EnthalpyJ[i], state.FastKg[i], state.SlowKg[i], state.InertKg[i], state.WaterKg[i]);

    /// <summary>Conductances at a state and a wind.</summary>
    public HeapLinks Links(HeapState state, double windMPerS)
    {
        double[] k = new double[Cells];
        double[] capacity = new double[Cells];
        for (int i = 0; i < Cells; i++)
        {
            Cell cell = At(state, i);
            double solids = (cell.FastKg + cell.SlowKg + cell.InertKg) / Stuff.SolidsKgPerM3;
            double gas = Math.Max(0, 1 - ((solids + (cell.WaterKg * 0.001)) / VolumeM3[i]));
            k[i] = Stuff.ConductivityWPerMK(
                cell.WaterKg / VolumeM3[i], gas, cell.Celsius,
                MoistAir.SaturationPressureFastPa(Math.Clamp(cell.Celsius, -40, 95)));
            capacity[i] = cell.JPerK;
        }

        return Links(k, capacity, windMPerS);
    }

    /// <summary>Conductances at conductivities, W/(m·K), one a cell.</summary>
    public HeapLinks Links(double[] conductivity, double[] capacityJPerK, double windMPerS)
    {
        double outer = (_build.CoverThicknessM / CoverWPerMK) + (1 / (6 + (3 * windMPerS)));
        double[] body = new double[Shells];
        double[] air = new double[Shells];
        double[] ground = new double[Shells];
        for (int i = 0; i < Shells; i++)
        {
            double half = 0.25 * _build.HeightM / conductivity[i];
            air[i] = _grid.PlanAreaM2[i] / (half + outer);
            ground[i] = _grid.PlanAreaM2[i] / (half + GroundM2KPerW);
            if (i + 1 < Shells)
            {
                body[i] = _grid.FaceM(i) * 0.5 * (conductivity[i] + conductivity[i + 1]);
            }
        }

        air[Shells - 1] += _grid.SideAreaM2 / ((0.5 * _grid.ThicknessM / conductivity[Shells - 1]) + outer);
        double drum = HasDrum
            ? 2 * Math.PI * _grid.EdgeM[0] * _build.HeightM * conductivity[0] / (0.5 * _grid.ThicknessM)
            : 0;
        double[] rings = [];
        double wall = 0;
        if (_sleeve is not null)
        {
            _sleeve.Refresh(conductivity.AsSpan(Shells), capacityJPerK.AsSpan(Shells), capacityJPerK[CoilShell]);
            rings = [.. _sleeve.Chain.LinkWPerK.AsSpan(0, Sleeve.Rings)];
            wall = _sleeve.WallWPerK;
        }

        return new HeapLinks(body, air, ground, rings, drum, wall);
    }
}

/// <summary>
/// Conductances, W/K: shell to the next, shell to the air outside, shell to the ground, sleeve ring to the next (the
/// last to the rest of its shell), drum to the first shell, innermost ring to the pipe.
/// </summary>
internal sealed record HeapLinks(
    double[] Body, double[] Air, double[] Ground, double[] Rings, double Drum, double Wall);
