using PileController.Control;
using PileController.Seasons;
using PileController.Settings;

namespace PileController.Benchmarks;

/// <summary>
/// The cut-out's two numbers as a careful grower would find them: of all pairs on the grid, the one with the fewest
/// cold degree-hours over the training winters.
/// </summary>
internal static class CutoutTuning
{
    public static async Task<int> RunAsync(TextWriter output)
    {
        output.WriteLine("| off °C | on °C | cold K·h on the training winters | h below floor | least active zone °C |");
        output.WriteLine("| --- | --- | --- | --- | --- |");
        (double Cold, double Off, double On) best = (double.PositiveInfinity, 0, 0);
        foreach (double off in (double[])[20, 25, 30, 35, 40, 45, 50, 55])
        {
            foreach (double band in (double[])[2, 5, 10])
            {
                double cold = 0;
                double below = 0;
                double least = double.PositiveInfinity;
                foreach (Winter winter in Winter.All.Where(w => w.Training))
                {
                    SeasonResult r = await winter.RunAsync(PileSettings.AlderBank.Control with
                    {
                        Policy = DrawPolicy.Cutout,
                        CutoutOffC = off,
                        CutoutOnC = off + band,
                    });
                    cold += r.ColdDegreeHours;
                    below += r.HoursBelowFloor;
                    least = Math.Min(least, r.MinActiveZoneC ?? least);
                }

                output.WriteLine($"| {off:F0} | {off + band:F0} | {cold:F0} | {below:F0} | {least:F1} |");
                best = cold < best.Cold ? (cold, off, off + band) : best;
            }
        }

        output.WriteLine($"Best: off below {best.Off:F0} °C, on again above {best.On:F0} °C.");
        return 0;
    }
}
