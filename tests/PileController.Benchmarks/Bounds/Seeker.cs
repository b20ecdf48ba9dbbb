using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// Seeks the best plan from a start. Each round lives the plan on the plant, prices every joule along that run, and moves
/// every hour's levels towards those of greatest worth at these prices: boldly while an hour goes on wanting the same
/// way, in ever smaller steps once it turns round. What counts is only what the plant then says: the best plan lived is
/// kept.
/// </summary>
internal sealed class Seeker(SeasonPlan season)
{
    private const double MostStep = 0.35;
    private const double LeastStep = 0.02;
    private const double Bolder = 1.2;
    private const double Shyer = 0.5;

    // The plan is sought a little above the floor, since ticks of a minute are not the ticks of the score.
    private const double FloorHeadK = 0.03;
    private const double MostSlackK = 1;
    private const double FloorWorthPerK = 0.02;

    // About what it costs to mend an undershoot, K·h per K and per hour; only for choosing among plans.
    private const double UndershootWorth = 60;
    private const double HourBelowWorth = 0.05;
    private const double SpareCharge = 0.5;
    private const double ChargeWorth = 2e-7;

    private readonly Pricing _pricing = new(season);

    public Pricing Pricing => _pricing;

    /// <summary>Seeks from a start.</summary>
    /// <param name="start">The first plan.</param>
    /// <param name="firstStep">How far an hour's level may move in the first round, 0 to 1.</param>
    /// <param name="rounds">How many rounds, each one season long.</param>
    /// <param name="told">Told each round's outcome.</param>
    public (Schedule Plan, Outcome Quick) Seek(Schedule start, double firstStep, int rounds, Action<int, Outcome>? told)
    {
        Schedule plan = start.Copy();
        int hours = plan.Hours;
        Movement water = new(hours, firstStep, MostStep, LeastStep, Bolder, Shyer);
        Movement air = new(hours, firstStep, MostStep, LeastStep, Bolder, Shyer);
        double[] floorWorth = new double[hours];
        double[] batteryWorth = new double[hours];
        (Schedule Plan, Outcome Quick, double Score) best = (plan, new Outcome(0, 0, 0, 0, 0, null), double.PositiveInfinity);
        for (int round = 0; round < rounds; round++)
        {
            Trace trace = new();
            Outcome lived = Replay.Run(season, plan, Replay.QuickSeconds, trace);
            told?.Invoke(round, lived);
            double score = lived.ColdDegreeHours + (UndershootWorth * lived.UndershootK) + (HourBelowWorth * lived.HoursBelowFloor);
            if (score < best.Score)
            {
                best = (plan.Copy(), lived, score);
            }

            Floor(trace, floorWorth);
            Battery(trace, batteryWorth);
            double soft = Math.Max(0.15, 1.0 - (1.2 * round / rounds));
            Prices prices = _pricing.Of(trace, floorWorth, batteryWorth, soft);
            for (int h = 0; h < hours; h++)
            {
                bool may = h >= trace.LitHour;
                plan.Water[h] = may ? water.Towards(h, plan.Water[h], Best(Levels.Water, prices.WaterWorth[h])) : 0;
                plan.Air[h] = may ? air.Towards(h, plan.Air[h], Best(Levels.Air, prices.AirWorth[h])) : 0;
            }
        }

        return (best.Plan, best.Quick);
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

    private void Floor(Trace trace, double[] worth)
    {
        for (int h = 0; h < worth.Length; h++)
        {
            double zone = trace.Marks[h * Trace.MarksAnHour].ActiveZoneC;
            double lack = season.Control.HeapFloorC + FloorHeadK - zone;
            worth[h] = h < trace.LitHour ? 0 : Math.Max(0, worth[h] + (FloorWorthPerK * Math.Max(-MostSlackK, lack)));
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

    private sealed class Movement(int hours, double first, double most, double least, double bolder, double shyer)
    {
        private readonly double[] _step = Enumerable.Repeat(first, hours).ToArray();
        private readonly int[] _way = new int[hours];

        public double Towards(int hour, double at, double target)
        {
            int way = Math.Sign(target - at);
            if (way * _way[hour] > 0)
            {
                _step[hour] = Math.Min(most, _step[hour] * bolder);
            }
            else if (way * _way[hour] < 0)
            {
                _step[hour] = Math.Max(least, _step[hour] * shyer);
            }

            _way[hour] = way;
            return at + Math.Clamp(target - at, -_step[hour], _step[hour]);
        }
    }
}
