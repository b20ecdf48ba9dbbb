using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>A plan, what the floor is worth hour by hour along it (K·h a kelvin and hour), and what it came to in quick ticks.</summary>
internal sealed record Sought(Schedule Plan, double[] FloorWorth, Outcome? Quick)
{
    public static Sought Start(Schedule plan) => new(plan, new double[plan.Hours], null);
}

/// <summary>How boldly a plan is sought.</summary>
/// <param name="FirstStep">How far an hour's level may move in the first round, 0 to 1.</param>
/// <param name="MostStep">How far at most, later.</param>
/// <param name="SoftK">Width over which the worth of warmth fades at the house's minimum, in the first round, K.</param>
/// <param name="FloorShare">Share of the full correction of the floor's worth, in the first round.</param>
internal sealed record Pace(double FirstStep, double MostStep, double SoftK, double FloorShare)
{
    public static Pace Bold { get; } = new(0.25, 0.35, 1, 1);

    public static Pace Careful { get; } = new(0.03, 0.1, 0.3, 1);
}

/// <summary>
/// Seeks the best plan from a start. Each round lives the plan on the plant, prices every joule along that run, and moves
/// every hour's levels towards those of greatest worth at these prices: boldly while an hour goes on wanting the same
/// way, in ever smaller steps once it turns round. What counts is only what the plant then says: the best plan lived is
/// kept.
/// </summary>
internal sealed class Seeker(SeasonPlan season)
{
    private const double LeastSoftK = 0.15;

    // The plan is sought a little above the floor, since ticks of a minute are not the ticks of the score.
    private const double FloorHeadK = 0.03;

    // A plan far off must not drive the floor's worth up beyond what takes rounds to come down from.
    private const double MostLackK = 1;
    private const double Fade = 0.12;
    private const double LeastShare = 0.5;
    private const double FloorWorthPerK = 0.03;

    // What is lacking now counts at once as well; without it plan and worth chase one another.
    private const double DampWorthPerK = 0.08;

    // About what it costs to mend an undershoot, K·h per K and per hour; only for choosing among plans.
    private const double UndershootWorth = 100;
    private const double HourBelowWorth = 0.05;
    private const double SpareCharge = 0.5;
    private const double ChargeWorth = 2e-7;

    private readonly Pricing _pricing = new(season);

    public Pricing Pricing => _pricing;

    /// <summary>Seeks from a start.</summary>
    /// <param name="start">The first plan.</param>
    /// <param name="pace">How boldly.</param>
    /// <param name="rounds">How many rounds, each one season long.</param>
    /// <param name="told">Told each round's outcome.</param>
    public Sought Seek(Sought start, Pace pace, int rounds, Action<int, Outcome>? told)
    {
        Schedule plan = start.Plan.Copy();
        int hours = plan.Hours;
        Movement water = new(hours, pace);
        Movement air = new(hours, pace);
        double[] floorWorth = [.. start.FloorWorth];
        double[] batteryWorth = new double[hours];
        Sought best = start;
        double least = double.PositiveInfinity;
        for (int round = 0; round < rounds; round++)
        {
            Trace trace = new();
            Outcome lived = Replay.Run(season, plan, Replay.QuickSeconds, trace);
            told?.Invoke(round, lived);
            double score = lived.ColdDegreeHours + (UndershootWorth * lived.UndershootK) + (HourBelowWorth * lived.HoursBelowFloor);
            double left = 1 - ((double)round / rounds);
            double[] lackK = LackK(trace);
            Correct(floorWorth, lackK, Math.Max(LeastShare, pace.FloorShare * left));
            if (score < least)
            {
                least = score;
                best = new Sought(plan.Copy(), [.. floorWorth], lived);
            }

            Battery(trace, batteryWorth);
            double[] damped = [.. floorWorth.Zip(lackK, (worth, lack) => worth + (DampWorthPerK * Math.Max(0, lack)))];
            Prices prices = _pricing.Of(trace, damped, batteryWorth, Math.Max(LeastSoftK, pace.SoftK * ((1.2 * left) - 0.2)));
            for (int h = 0; h < hours; h++)
            {
                bool may = h >= trace.LitHour;
                plan.Water[h] = may ? water.Towards(h, plan.Water[h], Best(Levels.Water, prices.WaterWorth[h])) : 0;
                plan.Air[h] = may ? air.Towards(h, plan.Air[h], Best(Levels.Air, prices.AirWorth[h])) : 0;
            }
        }

        return best;
    }

    private static double Best(double[] levels, double[] worth)
    {
        int best = 0;
        for (int k = 1; k < levels.Length; k++)
        {
            best = worth[k] > worth[best] ? k : best;
        }

        return levels[best];
    }

    // How far below its floor, and a little head, the heap stands at each hour once it has lit.
    private double[] LackK(Trace trace)
    {
        double[] lack = new double[trace.Hours.Count - 1];
        for (int h = 0; h < lack.Length; h++)
        {
            lack[h] = h < trace.LitHour
                ? double.NegativeInfinity
                : season.Control.HeapFloorC + FloorHeadK - trace.Marks[h * Trace.MarksAnHour].ActiveZoneC;
        }

        return lack;
    }

    // By smaller corrections the longer it goes on, so that plan and worth settle on one another.
    private static void Correct(double[] worth, double[] lackK, double share)
    {
        for (int h = 0; h < worth.Length; h++)
        {
            worth[h] = lackK[h] > 0
                ? worth[h] + (share * FloorWorthPerK * Math.Min(MostLackK, lackK[h]))
                : worth[h] * (1 - (share * Fade * Math.Min(1, -lackK[h] / MostLackK)));
        }
    }

    // Electricity spent before the battery runs low is worth what it will lack; a full battery forgets.
    private void Battery(Trace trace, double[] worth)
    {
        if (season.Build.Power.BatteryWattHours <= 0)
        {
            return;
        }

        double ahead = 0;
        for (int h = worth.Length - 1; h >= 0; h--)
        {
            double charge = trace.Marks[h * Trace.MarksAnHour].Charge;
            ahead = charge >= 1 ? 0 : ahead + (ChargeWorth * Math.Max(0, SpareCharge - charge));
            worth[h] = ahead;
        }
    }

    private sealed class Movement(int hours, Pace pace)
    {
        private const double LeastStep = 0.02;
        private const double Bolder = 1.2;
        private const double Shyer = 0.5;

        private readonly double[] _step = Enumerable.Repeat(pace.FirstStep, hours).ToArray();
        private readonly int[] _way = new int[hours];

        public double Towards(int hour, double at, double target)
        {
            int way = Math.Sign(target - at);
            if (way * _way[hour] > 0)
            {
                _step[hour] = Math.Min(pace.MostStep, _step[hour] * Bolder);
            }
            else if (way * _way[hour] < 0)
            {
                _step[hour] = Math.Max(LeastStep, _step[hour] * Shyer);
            }

            _way[hour] = way;
            return at + Math.Clamp(target - at, -_step[hour], _step[hour]);
        }
    }
}
