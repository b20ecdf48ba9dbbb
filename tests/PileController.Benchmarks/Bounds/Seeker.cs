using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>A plan and what it came to in the ticks of the score.</summary>
internal sealed record Sought(Schedule Plan, Outcome Exact);

/// <summary>
/// How steps, the softness of the house's minimum and the evenness of levels shrink from the first round to the last: by
/// like shares, so that the last third of the rounds is spent near the end.
/// </summary>
/// <param name="Rounds">How many rounds, each one season long.</param>
internal sealed record Pace(int Rounds)
{
    // How far an hour's level may move in a round, 0 to 1.
    private const double FirstStep = 0.35;
    private const double LastStep = 0.03;
    private const double Settling = 0.5;

    // Width over which the worth of warmth fades at the house's minimum, K, which falls in this share of the rounds. A plan that
    // is begun with warmth worth something all the time has unlike starts forgotten: a heap may be led hot and drawn on little
    // or cool and drawn on much, and either is best among those near it.
    private const double FirstSoftK = 5;
    private const double SoftShare = 0.6;
    private const double LastSoftK = 0.1;

    // Width of the edge of the hottest half, K. Where it is sharp a cell inside it is drawn on at the zone's cost and one that
    // has fallen out of it for nothing, so that either stays as it is: plans that spare the bed round the ducts in the coldest
    // days and plans that give it up stand side by side, and a battery that is short leads starts to both.
    private const double FirstEdgeK = 6;
    private const double LastEdgeK = 0.2;

    // Worth too little to choose by, K·h an hour.
    private const double FirstEven = 2e-3;
    private const double LastEven = 2e-4;

    /// <summary>Rounds at the end that are lived in the ticks of the score.</summary>
    public const int ExactRounds = 8;

    // The last rounds only settle on the floor.
    public double Step(int round) =>
        Between(FirstStep, LastStep, round, 1) * Math.Pow(Settling, Math.Max(0, round - (Rounds - ExactRounds)));

    public double SoftK(int round) => Between(FirstSoftK, LastSoftK, round, SoftShare);

    public double EdgeK(int round) => Between(FirstEdgeK, LastEdgeK, round, SoftShare);

    public double Even(int round) => Between(FirstEven, LastEven, round, SoftShare);

    public double TickSeconds(int round) => round >= Rounds - ExactRounds ? Replay.ExactSeconds : Replay.QuickSeconds;

    private double Between(double first, double last, int round, double share) =>
        first * Math.Pow(last / first, Math.Min(1, round / Math.Max(1, share * (Rounds - ExactRounds))));
}

/// <summary>
/// Seeks the best plan from a start. Each round lives the plan on the plant, prices every joule along that run, and moves
/// every hour's levels towards those of greatest worth at these prices: boldly while an hour goes on wanting the same
/// way, in ever smaller steps once it turns round. Steps and the softness of the house's minimum shrink together, so plans
/// from unlike starts settle on the same worth. What counts is only what the plant then says: the best plan lived is kept.
/// </summary>
internal sealed class Seeker(SeasonPlan season)
{
    // Ticks of a minute are not the ticks of the score: with them the plan is sought a little above the floor.
    private const double QuickHeadK = 0.03;
    private const double LeastHeadK = 0.004;

    private const double MostStartUndershootK = 3;
    private const double LeastShare = 0.1;

    // Answers are found anew after so many rounds, at these shares of the season.
    private const int AnswersFor = 8;
    private static readonly double[] AnswersAt = [0.35, 0.6, 0.85, 1];

    // About what it costs to mend an undershoot, K·h per K and per hour; only for choosing among plans.
    private const double UndershootWorth = 100;
    private const double HourBelowWorth = 0.05;

    // Cold degree-hours of a house that is never cold, K·h.
    private const double NothingLeft = 0.05;

    private readonly Pricing _pricing = new(season);
    private readonly PowerTaken _power = new(season);

    // While a plan is sought the battery holds nothing back: only what its charge is worth does. What is locked out spends
    // nothing and brings nothing, and from there no price tells what it would bring.
    private readonly SeasonPlan _unheld = season with
    {
        Build = season.Build with { Power = season.Build.Power with { BatteryWattHours = 0 } },
    };

    /// <summary>Seeks from a start. What it came to is told in the ticks of the score.</summary>
    /// <param name="start">The first plan.</param>
    /// <param name="rounds">How many rounds.</param>
    /// <param name="told">Told each round's outcome.</param>
    public Sought Seek(Schedule start, int rounds, Action<int, Outcome>? told)
    {
        Pace pace = new(rounds);
        Schedule plan = Living(start);
        int hours = plan.Hours;
        Movement water = new(hours, pace.Step(0));
        Movement air = new(hours, pace.Step(0));
        double[] floorWorth = new double[(hours / 24) + 1];
        double[] chargeWorth = [];
        IReadOnlyList<Answer> answers = [];
        Sought? best = null;
        for (int round = 0; ; round++)
        {
            Trace trace = new();
            double tick = pace.TickSeconds(round);
            Outcome lived = Replay.Run(tick > Replay.ExactSeconds ? _unheld : season, plan, tick, trace);
            told?.Invoke(round, lived);
            if (tick <= Replay.ExactSeconds && (best is null || Score(lived) < Score(best.Exact)))
            {
                best = new Sought(plan.Copy(), lived);
            }

            Charging? charging = trace.LitHour < hours && season.Build.Power.BatteryWattHours > 0
                ? new Charging(season, trace, plan, _power)
                : null;
            bool over = trace.LitHour >= hours
                || (lived.ColdDegreeHours < NothingLeft && lived.HoursBelowFloor <= 0 && !(charging?.Lack.Max() > 0));
            if (best is not null && (over || round >= rounds - 1))
            {
                return best;
            }

            if (over)
            {
                // Only the ticks of the score have yet to say so.
                round = Math.Max(round, rounds - Pace.ExactRounds - 1);
                continue;
            }

            if (round % AnswersFor == 0)
            {
                answers = [.. AnswersAt.Select(share =>
                    _pricing.AnswerAt(trace, trace.LitHour + (int)(share * (hours - 1 - trace.LitHour)), pace.EdgeK(round)))];
            }

            (int[] at, double[] lackK) = Lowest(
                trace, season.Control.HeapFloorC + (tick > Replay.ExactSeconds ? QuickHeadK : LeastHeadK));
            double[] pulses = new double[hours];
            for (int day = 0; day < at.Length; day++)
            {
                pulses[at[day]] += floorWorth[day];
            }

            Array.Resize(ref chargeWorth, charging?.Days ?? 0);
            Prices prices = _pricing.Of(trace, pulses, pace.SoftK(round), pace.EdgeK(round));
            (double[] worth, chargeWorth, Schedule moved) = new Balance(answers, at, hours, _power, charging).Move(
                plan, prices, floorWorth[..at.Length], chargeWorth, lackK, water.Steps(pace.Step(round)), air.Steps(pace.Step(round)),
                trace.LitHour, pace.Even(round));
            worth.CopyTo(floorWorth, 0);
            water.Moved(plan.Water, moved.Water);
            air.Moved(plan.Air, moved.Air);
            plan = moved;
        }
    }

    // A plan that puts the heap out tells nothing of what better plans are worth: it is turned down until the heap lives.
    private Schedule Living(Schedule start)
    {
        double share = 1;
        while (true)
        {
            Schedule plan = Schedule.Of(start.Hours, h => (share * start.Water[h], share * start.Air[h]));
            if (share < LeastShare || Replay.Run(_unheld, plan, Replay.QuickSeconds).UndershootK < MostStartUndershootK)
            {
                return plan;
            }

            share *= 0.8;
        }
    }

    private static double Score(Outcome lived) =>
        lived.ColdDegreeHours + (UndershootWorth * lived.UndershootK) + (HourBelowWorth * lived.HoursBelowFloor);

    // The hour of each day from lighting on at which the zone stands lowest, and how far below a floor it is there.
    private static (int[] At, double[] LackK) Lowest(Trace trace, double floorC)
    {
        int hours = trace.Hours.Count - 1;
        List<int> at = [];
        List<double> lack = [];
        for (int from = Math.Max(1, trace.LitHour); from < hours; from += 24)
        {
            int lowest = Enumerable.Range(from, Math.Min(24, hours - from)).MinBy(h => trace.Marks[h * Trace.MarksAnHour].ActiveZoneC);
            at.Add(lowest);
            lack.Add(floorC - trace.Marks[lowest * Trace.MarksAnHour].ActiveZoneC);
        }

        return ([.. at], [.. lack]);
    }

    private sealed class Movement(int hours, double firstStep)
    {
        private const double LeastStep = 0.004;
        private const double Bolder = 1.2;
        private const double Shyer = 0.5;

        private readonly double[] _step = Enumerable.Repeat(firstStep, hours).ToArray();
        private readonly int[] _way = new int[hours];

        public double[] Steps(double most)
        {
            for (int h = 0; h < _step.Length; h++)
            {
                _step[h] = Math.Min(most, _step[h]);
            }

            return _step;
        }

        public void Moved(double[] before, double[] after)
        {
            for (int h = 0; h < _step.Length; h++)
            {
                int way = Math.Sign(after[h] - before[h]);
                _step[h] = Math.Max(LeastStep, _step[h] * (way * _way[h] > 0 ? Bolder : way * _way[h] < 0 ? Shyer : 1));
                _way[h] = way == 0 ? _way[h] : way;
            }
        }
    }
}
