namespace PileController.Physics.Heaps;

/// <summary>
/// A row of heat capacities joined by conductances, each also joined to a surrounding of its own. One backward Euler
/// step is a tridiagonal system; the caller then moves energy by the fluxes of the step, so that what leaves one
/// node enters another to the last bit. First order in time.
/// </summary>
/// <remarks>Thomas elimination; the matrix is diagonally dominant, so no pivoting is needed.</remarks>
public sealed class Chain
{
    private readonly double[] _ratio;

    /// <summary>A row of <paramref name="nodes"/> nodes.</summary>
    public Chain(int nodes)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(nodes);
        _ratio = new double[nodes];
        CapacityJPerK = new double[nodes];
        LinkWPerK = new double[nodes];
        AmbientWPerK = new double[nodes];
        AmbientC = new double[nodes];
        SourceW = new double[nodes];
        TemperatureC = new double[nodes];
    }

    /// <summary>Heat capacities, J/K, each above 0.</summary>
    public double[] CapacityJPerK { get; }

    /// <summary>Conductance from each node to the next, W/K; that of the last is not used.</summary>
    public double[] LinkWPerK { get; }

    /// <summary>Conductance from each node to its surrounding, W/K.</summary>
    public double[] AmbientWPerK { get; }

    /// <summary>Temperature of each node's surrounding, °C.</summary>
    public double[] AmbientC { get; }

    /// <summary>Heat put into each node, W.</summary>
    public double[] SourceW { get; }

    /// <summary>Temperatures, °C: before the step on entry, after it on return.</summary>
    public double[] TemperatureC { get; }

    /// <summary>Takes one backward Euler step.</summary>
    /// <param name="seconds">Length, s; above 0.</param>
    public void Step(double seconds)
    {
        double[] t = TemperatureC;
        int n = t.Length;
        double inverse = 1 / seconds;
        double left = 0;
        for (int i = 0; i < n; i++)
        {
            double right = i + 1 < n ? LinkWPerK[i] : 0;
            double store = CapacityJPerK[i] * inverse;
            double diagonal = store + left + right + AmbientWPerK[i];
            double value = (store * t[i]) + SourceW[i] + (AmbientWPerK[i] * AmbientC[i]);
            if (i > 0)
            {
                diagonal -= left * _ratio[i - 1];
                value += left * t[i - 1];
            }

            double scale = 1 / diagonal;
            _ratio[i] = right * scale;
            t[i] = value * scale;
            left = right;
        }

        for (int i = n - 2; i >= 0; i--)
        {
            t[i] += _ratio[i] * t[i + 1];
        }
    }
}
