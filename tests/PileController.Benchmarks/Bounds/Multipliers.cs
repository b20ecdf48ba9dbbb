namespace PileController.Benchmarks.Bounds;

/// <summary>
/// The worth of one limit on each day, on its way to the least under which the limit holds: it grows while the limit is
/// passed and shrinks while it is not, in longer steps as long as it goes on the same way and in half ones when it turns.
/// </summary>
internal sealed class Multipliers(double[] before, double firstStep, double mostStep, double leastStep, double mostRise)
{
    private const double Bolder = 1.3;
    private const double Shyer = 0.5;

    private readonly double[] _step = [.. Enumerable.Repeat(firstStep, before.Length)];
    private readonly int[] _way = new int[before.Length];

    /// <summary>Worth on each day.</summary>
    public double[] Now { get; } = [.. before];

    /// <summary>Moves the worth of a day.</summary>
    /// <param name="day">The day.</param>
    /// <param name="lack">By how much the limit is passed; below 0 where it is not.</param>
    public void Move(int day, double lack)
    {
        int to = lack > 0 ? 1 : Now[day] > 0 ? -1 : 0;
        double turned = to * _way[day] > 0 ? Bolder : to * _way[day] < 0 ? Shyer : 1;
        _step[day] = Math.Clamp(_step[day] * turned, leastStep, mostStep);
        Now[day] = Math.Clamp(Now[day] + (to * _step[day]), 0, before[day] + mostRise);
        _way[day] = to;
    }
}
