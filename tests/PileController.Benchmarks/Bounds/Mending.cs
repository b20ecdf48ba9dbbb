using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// Makes a plan lawful: as long as the heap undercuts its floor somewhere, the draws of the days before are turned down
/// a little. A plan that draws nothing at all is where it ends at the latest.
/// </summary>
internal static class Mending
{
    private const int DaysBefore = 5;
    private const double LeastCut = 0.002;
    private const double CutPerK = 0.15;
    private const double MostCut = 0.25;
    private const int MostTries = 60;

    // So near the floor quick ticks no longer tell, K.
    private const double NearK = 0.1;

    // Each try that has not helped asks for a little more room.
    private const double HeadPerTryK = 0.004;

    public static (Schedule Plan, Outcome Exact) Mend(SeasonPlan season, Schedule plan)
    {
        Schedule mended = plan.Copy();
        bool near = true;
        for (int tried = 0; tried < MostTries; tried++)
        {
            // Far from the floor quick ticks will do; near it they find fault with plans that are lawful in the ticks of the score.
            Trace trace = new();
            Outcome lived = Replay.Run(season, mended, near ? Replay.ExactSeconds : Replay.QuickSeconds, trace);
            if (near && lived.HoursBelowFloor <= 0)
            {
                return (mended, lived);
            }

            near = lived.UndershootK < NearK;
            TurnDown(season.Control.HeapFloorC + (HeadPerTryK * (tried + 1)), trace, mended);
        }

        Schedule nothing = Schedule.Nothing(plan.Hours);
        return (nothing, Replay.Run(season, nothing, Replay.ExactSeconds));
    }

    private static void TurnDown(double floorC, Trace trace, Schedule plan)
    {
        double[] cut = new double[plan.Hours];
        for (int h = Math.Max(1, trace.LitHour); h < plan.Hours; h++)
        {
            double lack = floorC - LeastZoneC(trace, h);
            if (lack <= 0)
            {
                continue;
            }

            double share = Math.Clamp(CutPerK * lack, LeastCut, MostCut);
            for (int before = Math.Max(0, h - (24 * DaysBefore)); before <= h; before++)
            {
                cut[before] = Math.Max(cut[before], share);
            }
        }

        for (int h = 0; h < plan.Hours; h++)
        {
            plan.Water[h] *= 1 - cut[h];
            plan.Air[h] *= 1 - cut[h];
        }
    }

    private static double LeastZoneC(Trace trace, int hour)
    {
        double least = double.PositiveInfinity;
        for (int m = hour * Trace.MarksAnHour; m < (hour + 1) * Trace.MarksAnHour; m++)
        {
            least = Math.Min(least, trace.Marks[m].ActiveZoneC);
        }

        return least;
    }
}
