using PileController.Settings.Fields;

namespace PileController.Settings.Checks;

/// <summary>Runs all checks between settings.</summary>
internal static class CrossChecks
{
    private static readonly Check[] All =
    [
        .. OrderChecks.All, .. HeapChecks.All, .. ProbeChecks.All, .. FaultChecks.All, .. HardwareChecks.All, .. WiringChecks.All,
        .. OutputChecks.All, .. ValveChecks.All, .. PanelChecks.All,
        .. AlarmChecks.All,
    ];

    /// <summary>The faults between settings that are each sound by themselves.</summary>
    public static IEnumerable<SettingsFault> Run(PileSettings settings, FileReading reading)
    {
        string[] faulty = [.. reading.Faults.Select(f => f.Path)];
        foreach (Check check in All)
        {
            // A value that is wrong by itself was replaced by its default: comparing that would accuse the innocent.
            if (check.Paths.Any(p => faulty.Any(f => Overlap(f, p))))
            {
                continue;
            }

            foreach (Finding finding in check.Find(settings, reading))
            {
                int? line = reading.LineOf(finding.Path)
                    ?? check.Paths.Select(reading.LineOf).FirstOrDefault(l => l is not null);
                yield return new SettingsFault(finding.Path, finding.Given, finding.Allowed, line);
            }
        }
    }

    private static bool Overlap(string one, string other) => Within(one, other) || Within(other, one);

    private static bool Within(string inner, string outer) =>
        inner.StartsWith(outer, StringComparison.Ordinal)
        && (inner.Length == outer.Length || outer.Length == 0 || inner[outer.Length] is '.' or '[');
}
