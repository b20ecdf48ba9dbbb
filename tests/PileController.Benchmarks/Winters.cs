using PileController.Control;
using PileController.Seasons;
using PileController.Settings;

namespace PileController.Benchmarks;

/// <summary>All draw rules on all winters, in one table.</summary>
internal static class Winters
{
    public static async Task<int> RunAsync(TextWriter output)
    {
        output.WriteLine("| winter | rule | cold K·h | avoided K·h | h below floor | least active zone °C | least at turns °C | lit on day | quiet on day | drawn kWh | useful kWh | made kWh | dry mass lost kg | water lost kg | frost guard h | pump kWh | balance error | ticks/s |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (Winter winter in Winter.All)
        {
            double none = double.NaN;
            foreach (DrawPolicy policy in Enum.GetValues<DrawPolicy>().OrderByDescending(p => p))
            {
                SeasonResult r = await winter.RunAsync(PileSettings.AlderBank.Control with { Policy = policy });
                none = policy == DrawPolicy.None ? r.ColdDegreeHours : none;
                output.WriteLine(
                    $"| {winter.Name} | {r.Policy} | {r.ColdDegreeHours:F0} | {none - r.ColdDegreeHours:F0} | {r.HoursBelowFloor:F0} | {r.MinActiveZoneC:F1} | {r.MinTurnsC:F1} | {r.LitOnDay:F1} | {r.StalledOnDay:F0} | {r.DrawnKWh:F0} | {r.UsefulKWh:F0} | {r.GeneratedKWh:F0} | {r.DryMassLostKg:F0} | {r.WaterLostKg:F0} | {r.FrostGuardHours:F0} | {r.PumpKWh:F1} | {r.EnergyErrorFraction:E0} | {r.TicksPerSecond:F0} |");
            }
        }

        return 0;
    }
}
