namespace PileController.Benchmarks.Bounds;

/// <summary>
/// What a joule is worth, in cold degree-hours it saves, at each whole hour of a run: in each cell of the heap, in drum,
/// tank, house air and house floor; and what a kilogram of solids and water in each cell is worth.
/// </summary>
internal sealed class Prices(int hours, int cells)
{
    public double[][] Cell { get; } = Rows(hours + 1, cells);

    public double[][] Fast { get; } = Rows(hours + 1, cells);

    public double[][] Slow { get; } = Rows(hours + 1, cells);

    public double[][] Water { get; } = Rows(hours + 1, cells);

    public double[] Drum { get; } = new double[hours + 1];

    public double[] Tank { get; } = new double[hours + 1];

    public double[] Air { get; } = new double[hours + 1];

    public double[] Floor { get; } = new double[hours + 1];

    /// <summary>Worth of running the water an hour, but for its electricity, at each of <see cref="Levels.Water"/>, K·h.</summary>
    public double[][] WaterWorth { get; } = Rows(hours, Levels.Water.Length);

    /// <summary>Worth of running the air an hour, but for its electricity, at each of <see cref="Levels.Air"/>, K·h.</summary>
    public double[][] AirWorth { get; } = Rows(hours, Levels.Air.Length);

    /// <summary>Heat the coil's water would take from the bed in the hour at each of <see cref="Levels.Water"/>, J.</summary>
    public double[][] CoilJ { get; } = Rows(hours, Levels.Water.Length);

    /// <summary>Heat it would take from the drum, J.</summary>
    public double[][] DrumJ { get; } = Rows(hours, Levels.Water.Length);

    /// <summary>Heat the air would take from the shell of the ducts in the hour at each of <see cref="Levels.Air"/>, J.</summary>
    public double[][] DuctJ { get; } = Rows(hours, Levels.Air.Length);

    private static double[][] Rows(int rows, int columns)
    {
        double[][] made = new double[rows][];
        for (int i = 0; i < rows; i++)
        {
            made[i] = new double[columns];
        }

        return made;
    }
}

/// <summary>The levels a plan is weighed at.</summary>
internal static class Levels
{
    public static readonly double[] Water = [0, 0.35, 0.425, 0.5, 0.6, 0.75, 1];

    public static readonly double[] Air = [0, 0.3, 0.4, 0.55, 0.75, 1];

    /// <summary>A value at a level, straight between those at the levels beside it.</summary>
    public static double Between(double[] levels, double[] values, double level)
    {
        int k = 1;
        while (k + 1 < levels.Length && levels[k] < level)
        {
            k++;
        }

        return values[k - 1] + ((level - levels[k - 1]) / (levels[k] - levels[k - 1]) * (values[k] - values[k - 1]));
    }
}
