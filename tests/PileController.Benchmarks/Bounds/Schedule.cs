using System.Text.Json.Serialization;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// A plan of a season, hour by hour: how hard pump and blower are to run, 0 to 1. A level is a duty; below the least
/// duty of the device it is a share of the hour at that least duty.
/// </summary>
internal sealed record Schedule(double[] Water, double[] Air)
{
    [JsonIgnore]
    public int Hours => Water.Length;

    public static Schedule Nothing(int hours) => new(new double[hours], new double[hours]);

    public static Schedule Of(int hours, Func<int, (double Water, double Air)> level)
    {
        Schedule made = Nothing(hours);
        for (int h = 0; h < hours; h++)
        {
            (made.Water[h], made.Air[h]) = level(h);
        }

        return made;
    }

    public Schedule Copy() => new([.. Water], [.. Air]);
}
