using PileController.Control.Decisions;

namespace PileController.Records.Checking;

/// <summary>Tells in what two decisions of one tick differ, as far as it matters to heap and house.</summary>
internal static class DecisionDifference
{
    // What the record keeps of a power, and of a share.
    private const double Watts = 0.1;
    private const double Share = 0.0001;

    private static readonly (string Name, string Unit, double Least, Func<Decision, double> Of)[] Figures =
    [
        ("want", " W", Watts, d => d.WantWatts),
        ("means", " W", Watts, d => d.MeansWatts),
        ("grant", " W", Watts, d => d.GrantWatts),
        ("pump", "", Share, d => d.Outputs.PumpDuty),
        ("valve", "", Share, d => d.Outputs.ValveOpening),
        ("blower", "", Share, d => d.Outputs.BlowerDuty),
        ("backup heat", "", Share, d => d.Outputs.BackupOn ? 1 : 0),
    ];

    /// <summary>All that differs, in a sentence; null when nothing does.</summary>
    public static string? Of(Decision then, Decision now)
    {
        List<string> all = [];
        if (then.Mode != now.Mode)
        {
            all.Add($"mode {then.Mode} → {now.Mode}");
        }

        if (then.Curb != now.Curb)
        {
            all.Add($"curb {then.Curb} → {now.Curb}");
        }

        foreach ((string name, string unit, double least, Func<Decision, double> of) in Figures)
        {
            if (Math.Abs(of(then) - of(now)) >= least)
            {
                all.Add($"{name} {of(then):0.####}{unit} → {of(now):0.####}{unit}");
            }
        }

        return all.Count == 0 ? null : string.Join(", ", all) + ".";
    }
}
