using PileController.Records.Checking;

namespace PileController.Commands.Running;

/// <summary>What other settings would have decided, for a person.</summary>
internal static class ComparisonText
{
    private const double JoulesAKilowattHour = 3.6e6;

    /// <summary>Says where they differ first, how often, and what both come to.</summary>
    public static void Tell(TextWriter output, CourseComparison comparison)
    {
        foreach (string problem in comparison.Problems)
        {
            output.WriteLine(problem);
        }

        string span = $"{ReplayText.Moment(comparison.FromUtcMilliseconds)} to {ReplayText.Moment(comparison.ToUtcMilliseconds)}";
        if (comparison.Ticks == 0)
        {
            output.WriteLine($"{span}: no ticks that can be run again.");
            return;
        }

        output.WriteLine($"{span}: {comparison.Differing} of {comparison.Ticks} ticks would have been decided otherwise.");
        if (comparison.AsRecorded < comparison.Ticks)
        {
            output.WriteLine($"With their own settings {comparison.AsRecorded} of them come out as recorded; the others by this build's rules.");
        }

        if (comparison.FirstDifference is { } first)
        {
            output.WriteLine($"First at tick {first.Sequence}, {ReplayText.Moment(first.UtcMilliseconds)}: {first.What}");
        }

        output.WriteLine();
        output.WriteLine($"{"",-22}{"as it was",12}{"otherwise",12}");
        Row("granted, kWh", comparison, sum => sum.GrantJoules / JoulesAKilowattHour, "F2");
        Row("drawn by water, kWh", comparison, sum => sum.WaterJoules / JoulesAKilowattHour, "F2");
        Row("drawn by air, kWh", comparison, sum => sum.AirJoules / JoulesAKilowattHour, "F2");
        Counts("ticks in mode", comparison, sum => sum.Modes);
        Counts("ticks under curb", comparison, sum => sum.Curbs);
        output.WriteLine();
        output.WriteLine("Each tick is decided on what was read and run until then. What heap and house would have answered is not in it, so neither is other heat drawn.");

        void Row(string name, CourseComparison both, Func<CourseSum, double> of, string format) =>
            output.WriteLine($"{name,-22}{of(both.Then).ToString(format),12}{of(both.Now).ToString(format),12}");

        void Counts<T>(string name, CourseComparison both, Func<CourseSum, IReadOnlyDictionary<T, long>> of)
            where T : struct, Enum
        {
            output.WriteLine(name);
            foreach (T value in of(both.Then).Keys.Union(of(both.Now).Keys).Order())
            {
                output.WriteLine($"  {value,-20}{of(both.Then).GetValueOrDefault(value),12}{of(both.Now).GetValueOrDefault(value),12}");
            }
        }
    }
}
