using PileController.Control;
using PileController.Control.Decisions;
using PileController.Physics.Heaps;
using PileController.Physics.Sky.Weather;
using PileController.Seasons;
using PileController.Simulation;

namespace PileController.Benchmarks.Scores;

/// <summary>Runs one cell and keeps the true plant's score beside what the controller believed.</summary>
internal static class CellRun
{
    private const double LeastBandSigmas = 1.96;
    private const double SettledDays = 10;
    private static readonly Command[] NoCommands = [];

    /// <summary>One season; the shares that need other cells are filled in later.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="weatherName">Name of the winter.</param>
    /// <param name="weather">The winter.</param>
    /// <param name="start">First day.</param>
    /// <param name="days">How many.</param>
    /// <param name="policy">The draw rule.</param>
    /// <param name="tick">Length of a tick, and of the plant's quick steps up to half a minute, s.</param>
    public static (Cell Cell, double SetPointDegreeHours) Of(
        RigCase rig, string weatherName, WeatherSeries weather, DateOnly start, int days, DrawPolicy policy, double tick)
    {
        ControlSettings control = rig.Settings.Control with { Policy = policy, TickSeconds = tick };
        SeasonPlan plan = SeasonPlanning.Of(rig.Settings, control, weather, start, days);
        Holding holding = new(plan.Build, control, plan.Rig, weather, plan.OffsetMinutes, plan.StartUtcMilliseconds,
            Math.Min(tick, 30));
        SeasonScore score = new(control);
        Belief belief = new();
        long ticks = (long)(days * 86_400.0 / tick);
        long day = (long)(86_400 / tick);
        int starts = 0;
        double travel = 0;
        Outputs before = default;
        for (long i = 1; i <= ticks; i++)
        {
            Decision decision = holding.Tick(holding.Read(), NoCommands);
            score.Add(holding.Plant, decision, tick);
            starts += decision.Outputs.PumpDuty > 0 && before.PumpDuty == 0 ? 1 : 0;
            travel += Math.Abs(decision.Outputs.ValveOpening - before.ValveOpening);
            before = decision.Outputs;
            belief.Add(holding.Plant.Heap, decision, tick);
            if (i % day == 0)
            {
                belief.EndDay(holding.Plant.Heap, score.LitOnDay is { } lit && i / day > lit + SettledDays);
            }
        }

        string name = policy.ToString().ToLowerInvariant();
        Cell cell = new(
            $"{rig.Name}, {weatherName}, {name}", rig.Name, weatherName, name, score.HoursBelowFloor,
            Math.Max(0, control.HeapFloorC - (score.MinActiveZoneC ?? control.HeapFloorC)), score.ColdDegreeHours, null, null, 0,
            score.StalledOnDay, score.FrostGuardHours, (double)starts / days, travel / 2 / days,
            belief.Coverage, belief.HalfWidthK, belief.WorstNetError, score.Tonight, false);
        return (cell, score.SetPointDegreeHours);
    }

    private sealed class Belief
    {
        private double _held;
        private double _seconds;
        private double _width;
        private double _netJ;
        private double _storedJ = double.NaN;
        private HeapLedger _ledger;

        public double Coverage => _seconds > 0 ? _held / _seconds : 1;

        public double HalfWidthK => _seconds > 0 ? _width / _seconds : 0;

        public double? WorstNetError { get; private set; }

        public void Add(Heap heap, Decision decision, double seconds)
        {
            _netJ += decision.Estimate.GenerationWatts * seconds;
            if (!decision.Estimate.Lit)
            {
                return;
            }

            double half = LeastBandSigmas * decision.Estimate.UncertaintyKelvin;
            _seconds += seconds;
            _width += half * seconds;
            _held += Math.Abs(decision.Estimate.ActiveZoneCelsius - heap.ActiveZoneC) <= half ? seconds : 0;
        }

        public void EndDay(Heap heap, bool counts)
        {
            HeapLedger ledger = heap.Ledger;
            double made = ledger.GeneratedJ - _ledger.GeneratedJ;
            if (counts && !double.IsNaN(_storedJ) && made > 0)
            {
                double net = heap.StoredJ - _storedJ + ledger.DrawnJ - _ledger.DrawnJ;
                WorstNetError = Math.Max(WorstNetError ?? 0, Math.Abs(_netJ - net) / made);
            }

            (_storedJ, _ledger, _netJ) = (heap.StoredJ, ledger, 0);
        }
    }
}
