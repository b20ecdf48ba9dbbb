using PileController.Control;
using PileController.Seasons;
using PileController.Settings;

namespace PileController.Benchmarks;

/// <summary>All draw rules on all winters, in one table.</summary>
internal static class Winters
{
    private static readonly (string Head, Func<SeasonResult, double, string> Of)[] Columns =
    [
        ("rule", (r, _) => r.Policy),
        ("cold K·h", (r, _) => $"{r.ColdDegreeHours:F0}"),
        ("avoided K·h", (r, none) => $"{none - r.ColdDegreeHours:F0}"),
        ("h below floor", (r, _) => $"{r.HoursBelowFloor:F0}"),
        ("least active zone °C", (r, _) => $"{r.MinActiveZoneC:F1}"),
        ("least at turns °C", (r, _) => $"{r.MinTurnsC:F1}"),
        ("lit on day", (r, _) => $"{r.LitOnDay:F1}"),
        ("quiet on day", (r, _) => r.StalledOnDay is { } day ? $"{day:F0}" : "–"),
        ("drawn kWh", (r, _) => $"{r.DrawnKWh:F0}"),
        ("useful kWh", (r, _) => $"{r.UsefulKWh:F0}"),
        ("made kWh", (r, _) => $"{r.GeneratedKWh:F0}"),
        ("dry mass lost kg", (r, _) => $"{r.DryMassLostKg:F0}"),
        ("water lost kg", (r, _) => $"{r.WaterLostKg:F0}"),
        ("frost guard h", (r, _) => $"{r.FrostGuardHours:F0}"),
        ("held by battery h", (r, _) => $"{r.BatteryHeldHours:F0}"),
        ("pump kWh", (r, _) => $"{r.PumpKWh:F1}"),
        ("balance error", (r, _) => $"{r.EnergyErrorFraction:E0}"),
        ("ticks/s", (r, _) => $"{r.TicksPerSecond:F0}"),
    ];

    public static async Task<int> RunAsync(TextWriter output)
    {
        foreach (Winter winter in Winter.All)
        {
            output.WriteLine($"\n{winter.Name}{(winter.Training ? " (training winter of the cut-out)" : "")}\n");
            output.WriteLine($"| {string.Join(" | ", Columns.Select(c => c.Head))} |");
            output.WriteLine($"| {string.Join(" | ", Columns.Select(_ => "---"))} |");
            double none = double.NaN;
            foreach (DrawPolicy policy in Enum.GetValues<DrawPolicy>().OrderByDescending(p => p))
            {
                SeasonResult r = await winter.RunAsync(PileSettings.AlderBank.Control with { Policy = policy });
                none = policy == DrawPolicy.None ? r.ColdDegreeHours : none;
                output.WriteLine($"| {string.Join(" | ", Columns.Select(c => c.Of(r, none)))} |");
            }
        }

        return 0;
    }
}
