using System.Globalization;
using PileController.Control.Readings;
using PileController.Settings.Fields;

namespace PileController.Settings.Checks;

/// <summary>What is allowed and still worth a word: files of earlier builds say some of it.</summary>
internal static class Warnings
{
    // Within which a running pump whose water stopped is to be off (common practice, no source).
    private const double FlowAnsweredSeconds = 30;

    // A stop falls into one tick, and the second reading without flow after it is the first that may trip.
    private const int LeastTicks = 3;

    /// <summary>The warnings of sound settings.</summary>
    /// <param name="settings">The settings.</param>
    /// <param name="reading">Knows the lines of the file.</param>
    public static IEnumerable<SettingsWarning> Of(PileSettings settings, FileReading reading) =>
        [.. FlowAnsweredLate(settings, reading), .. LinesUnseen(settings, reading)];

    private static IEnumerable<SettingsWarning> FlowAnsweredLate(PileSettings settings, FileReading reading)
    {
        double tick = settings.Control.TickSeconds;
        double time = settings.Control.Limits.NoFlowSeconds;

        // Whole ticks within the time, and one more: a tick that comes a moment early leaves the last of them short.
        double answered = tick * (1 + Math.Max(LeastTicks - 1, Math.Floor(time / tick) + 1));
        if (answered <= FlowAnsweredSeconds)
        {
            yield break;
        }

        (string path, double given, string mends) = LeastTicks * tick > FlowAnsweredSeconds
            ? ("control.tick", tick, $"{Seconds(FlowAnsweredSeconds / LeastTicks)} or less")
            : ("interlocks.noFlowTime", time, $"less than {Seconds(tick * (Math.Floor(FlowAnsweredSeconds / tick) - 1))}");
        yield return new SettingsWarning(
            path,
            Seconds(given),
            $"a running pump whose water stops is then off after up to {Seconds(answered)}, later than the {Seconds(FlowAnsweredSeconds)} within which it should be; {mends} keeps to them",
            reading.LineOf(path));
    }

    private static IEnumerable<SettingsWarning> LinesUnseen(PileSettings settings, FileReading reading)
    {
        if (!settings.Rig.Simulated && !settings.Rig.Probes.Any(probe => probe.Channel is Channel.Supply or Channel.Return or Channel.Outside))
        {
            yield return new SettingsWarning(
                "rig.probes",
                "without a probe for supply, return or outside",
                "nobody sees whether the lines are near frost, so water is moved ten minutes of each forty while the heap bears it; a probe for one of them ends that",
                reading.LineOf("rig.probes"));
        }
    }

    private static string Seconds(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:G6} s");
}
