using PileController.Plans.Ahead;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Benchmarks;

internal static class PlanningSteps
{
    public static int Run(TextWriter output)
    {
        PileSettings settings = PileSettings.AlderBank;
        AheadWinter[] winters =
        [
            .. Winter.All.Where(w => w.Name.EndsWith("2012", StringComparison.Ordinal)).Select(w =>
            {
                var weather = w.Weather();
                return WinterFinding.In(w.File, weather, 11, 1, 150, HoldingBuild.StandardOffsetMinutes(settings))[0];
            }),
        ];
        for (int season = 0; season < 2; season++)
        {
            AheadRequest request = new(settings, winters, 2, 150, 1);
            foreach ((double tick, double quick) in (double[][])[[10, 10], [60, 10], [60, 20], [60, 30], [60, 60], [30, 30]] switch { var a => a.Select(x => (x[0], x[1])) })
            {
                long t = System.Diagnostics.Stopwatch.GetTimestamp();
                var cpu = System.Diagnostics.Process.GetCurrentProcess().TotalProcessorTime;
                SeasonOutcome o = SeasonAhead.Run(request, season, new PlanSteps(tick, quick), default);
                var cpu2 = System.Diagnostics.Process.GetCurrentProcess().TotalProcessorTime - cpu;
                output.WriteLine($"{tick} {quick}: wall {System.Diagnostics.Stopwatch.GetElapsedTime(t).TotalSeconds:F2} cpu {cpu2.TotalSeconds:F2} {o}");
            }
        }
        return 0;
    }
}
