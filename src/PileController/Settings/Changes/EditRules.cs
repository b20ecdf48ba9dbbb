namespace PileController.Settings.Changes;

/// <summary>
/// What may be changed from the page. Whoever holds a phone may not move a limit that keeps people, plants or devices
/// whole past what the file says, nor change who reaches the page or which line moves what: those are for whoever can
/// write the file.
/// </summary>
internal static class EditRules
{
    private static readonly (string Prefix, string Why)[] InTheFile =
    [
        ("panel.", "it decides who reaches this page"),
        ("alarms.webhook", "it may hold a secret, and decides who is told"),
        ("alarms.heartbeat", "it may hold a secret, and decides who is told"),
        ("alarms.mail", "it decides who is told"),
        ("forecast.", "it names a file of this machine"),
        ("rig.kind", "it decides whether real devices move"),
        ("rig.hardware.", "a wrong line moves the wrong device; after a change in the file run check"),
        ("rig.probes", "a list is changed in the file"),
        ("rig.faults", "a list is changed in the file"),
        ("rig.seed", "it belongs to the simulated rig's start"),
        ("site.", "it belongs to the place; clock, sun and book hang on it"),
    ];

    // An address may carry its key within it.
    private static readonly string[] Secrets = ["alarms.webhook", "alarms.heartbeat.url"];

    private static readonly Guard[] Guards =
    [
        new("interlocks.lineFrost", s => s.Control.Limits.LineFrostC, LooserWhenHigher: false),
        new("interlocks.heapFire", s => s.Control.Limits.HeapFireC, LooserWhenHigher: true),
        new("interlocks.supplyMost", s => s.Control.Limits.SupplyMostC, LooserWhenHigher: true),
        new("interlocks.houseMost", s => s.Control.Limits.HouseMostC, LooserWhenHigher: true),
        new("interlocks.batteryLow", s => s.Control.Limits.BatteryLowV, LooserWhenHigher: false),
        new("interlocks.batteryEmpty", s => s.Control.Limits.BatteryEmptyV, LooserWhenHigher: false),
        new("interlocks.noFlow", s => s.Control.Limits.NoFlowLitresPerMinute, LooserWhenHigher: false),
        new("interlocks.carbonDioxide", s => s.Control.Limits.CarbonDioxidePpm, LooserWhenHigher: true),
        new("control.tick", s => s.Control.TickSeconds, LooserWhenHigher: true),
        new("interlocks.noFlowTime", s => s.Control.Limits.NoFlowSeconds, LooserWhenHigher: true),
        new("interlocks.noFlowGrace", s => s.Control.Limits.NoFlowGraceSeconds, LooserWhenHigher: true),
    ];

    /// <summary>Why a value can be changed in the file only, or null where the page may.</summary>
    public static string? WhyInTheFile(string path) =>
        InTheFile.FirstOrDefault(row => path.StartsWith(row.Prefix, StringComparison.Ordinal)).Why;

    /// <summary>Whether a value is told to nobody.</summary>
    public static bool IsSecret(string path) => Secrets.Contains(path);

    /// <summary>"higher" or "lower": the way a limit may be moved away from the file's; null where there is no such bound.</summary>
    public static string? MayGo(string path) =>
        Guards.FirstOrDefault(guard => guard.Path == path) is { } guard ? (guard.LooserWhenHigher ? "lower" : "higher") : null;

    /// <summary>The limits that <paramref name="asked"/> holds looser than the file.</summary>
    public static IEnumerable<SettingsFault> Loosened(PileSettings file, PileSettings asked)
    {
        foreach (Guard guard in Guards)
        {
            double bound = guard.Of(file);
            double given = guard.Of(asked);
            if (guard.LooserWhenHigher ? given > bound : given < bound)
            {
                string limit = SettingsLeaf.Of(file).Single(leaf => leaf.Path == guard.Path).Json;
                string wish = SettingsLeaf.Of(asked).Single(leaf => leaf.Path == guard.Path).Json;
                yield return new SettingsFault(
                    guard.Path, wish, $"{limit} as in the file, or {(guard.LooserWhenHigher ? "lower" : "higher")}; an interlock can be tightened from the page, not loosened");
            }
        }
    }

    private sealed record Guard(string Path, Func<PileSettings, double> Of, bool LooserWhenHigher);
}
