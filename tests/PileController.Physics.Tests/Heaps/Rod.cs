using PileController.Physics.Heaps;

namespace PileController.Physics.Tests.Heaps;

/// <summary>A long cylinder of one material that makes heat evenly and gives it off at its surface: conduction and nothing else.</summary>
internal sealed class Rod
{
    public const double RadiusM = 1.5;
    public const double WPerMK = 0.4;
    public const double JPerM3K = 2.5e6;

    private readonly Chain _chain;

    public Rod(int shells, double filmWPerM2K, double heatWPerM3, double startC, double ambientC)
    {
        Grid = new RadialGrid(0, RadiusM, 1, shells);
        _chain = new Chain(shells);
        for (int i = 0; i < shells; i++)
        {
            _chain.CapacityJPerK[i] = JPerM3K * Grid.VolumeM3[i];
            _chain.SourceW[i] = heatWPerM3 * Grid.VolumeM3[i];
            _chain.LinkWPerK[i] = i + 1 < shells ? WPerMK * Grid.FaceM(i) : 0;
            _chain.TemperatureC[i] = startC;
        }

        _chain.AmbientC[shells - 1] = ambientC;
        _chain.AmbientWPerK[shells - 1] = Grid.SideAreaM2 / ((0.5 * Grid.ThicknessM / WPerMK) + (1 / filmWPerM2K));
    }

    public RadialGrid Grid { get; }

    public ReadOnlySpan<double> TemperatureC => _chain.TemperatureC;

    public void Step(double seconds, int steps = 1)
    {
        for (int i = 0; i < steps; i++)
        {
            _chain.Step(seconds);
        }
    }

    /// <summary>Largest distance from a known solution over the shells' centres, K.</summary>
    public double WorstK(Func<double, double> knownC)
    {
        double worst = 0;
        for (int i = 0; i < Grid.Shells; i++)
        {
            worst = Math.Max(worst, Math.Abs(TemperatureC[i] - knownC(Grid.CentreM[i])));
        }

        return worst;
    }
}
