using PileController.Records;
using PileController.Records.Checking;

namespace PileController.Commands.Running;

/// <summary>What a replay found, for a person.</summary>
internal static class ReplayText
{
    /// <summary>Says how many ticks came out the same, and of those that another build made where they differ.</summary>
    public static void Tell(TextWriter output, ReplayReport report, RecordOrigin here)
    {
        foreach (string problem in report.Problems)
        {
            output.WriteLine(problem);
        }

        output.WriteLine($"{report.Identical} of {report.Ticks} ticks identical to the bit.");
        ReplayStretch[] others = [.. report.Stretches.Where(stretch => !RecordReplay.IsFrom(here, stretch))];
        if (others.Length > 0)
        {
            output.WriteLine($"This is build {here.Build} on {here.Platform}; what another made may come out otherwise:");
        }

        foreach (ReplayStretch stretch in report.Stretches.Where(stretch => others.Contains(stretch) || stretch.FirstDifference is not null))
        {
            bool other = others.Contains(stretch);
            string by = other ? $"build {stretch.Origin.Build} on {stretch.Origin.Platform}" : "this build";
            output.WriteLine(
                $"Tick {stretch.FirstSequence} to {stretch.LastSequence}, made by {by} with settings {stretch.Origin.SettingsHash}: {stretch.Identical} of {stretch.Ticks} identical.");
            if (stretch.FirstDifference is { } first)
            {
                output.WriteLine($"  First difference at tick {first.Sequence}, {Moment(first.UtcMilliseconds)}: {first.What}");
            }
        }
    }

    /// <summary>A moment, to the second.</summary>
    public static string Moment(long utcMilliseconds) =>
        $"{DateTimeOffset.FromUnixTimeMilliseconds(utcMilliseconds):yyyy-MM-dd HH:mm:ss}Z";
}
