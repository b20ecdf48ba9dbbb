using PileController.Physics.Plants;
using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>Lives a season on the plant under a schedule. With ticks of 10 s it is the plant of the seasons, to the bit.</summary>
internal static class Replay
{
    /// <summary>Ticks of the score.</summary>
    public const double ExactSeconds = 10;

    /// <summary>Ticks while a plan is being sought.</summary>
    public const double QuickSeconds = 60;

    private const double LitC = 50;
    private const double LitHours = 24;
    private const double UnlitFromDay = 20;

    /// <summary>Lives a season, or a part of it.</summary>
    /// <param name="season">The season.</param>
    /// <param name="plan">What is drawn.</param>
    /// <param name="tickSeconds">Length of a tick, s: 10 or 60.</param>
    /// <param name="trace">Keeps the run when given.</param>
    /// <param name="from">A plant of a lit heap to go on from; a fresh one when left out.</param>
    /// <param name="fromHour">The hour it stands at.</param>
    /// <param name="toHour">The hour to end at; the season's end when left out.</param>
    public static Outcome Run(SeasonPlan season, Schedule plan, double tickSeconds, Trace? trace = null, PlantState? from = null, int fromHour = 0, int? toHour = null)
    {
        Plant plant = new(
            season.Build, season.Weather, from ?? Plant.Fresh(season.Build, season.Weather, season.StartUtcMilliseconds), tickSeconds);
        Actuation actuation = new(season.Control, season.Build.Loop.ValveTravelSeconds);
        double tickHours = tickSeconds / 3600;
        int perHour = (int)(3600 / tickSeconds);
        int perMark = perHour / Trace.MarksAnHour;
        int ticks = (toHour ?? season.Days * 24) * perHour;
        double cold = 0;
        double below = 0;
        double least = double.PositiveInfinity;
        double hot = 0;
        double? lit = from is null ? null : 0;
        MarkMaker marks = new(plant, trace);
        for (int i = fromHour * perHour; i < ticks; i++)
        {
            int hour = i / perHour;
            if (i % perHour == 0)
            {
                trace?.Hours.Add(plant.Snapshot());
            }

            if (i % perMark == 0)
            {
                marks.Begin();
            }

            PlantInputs inputs = actuation.Next(
                plant, plan, hour, i % perHour * tickSeconds, lit is not null, tickSeconds);
            plant.Step(inputs, tickSeconds);
            marks.Add(inputs.BlowerDuty, actuation.HeldByBattery, perMark);
            double day = (i + 1) * tickHours / 24;
            cold += Math.Max(0, season.Control.HouseMinimumC - plant.HouseC) * tickHours;
            double zone = plant.Heap.ActiveZoneC;
            hot = zone >= LitC ? hot + tickHours : 0;
            if (lit is null && hot >= LitHours - 1e-9)
            {
                lit = day;
                if (trace is not null)
                {
                    trace.LitHour = hour + 1;
                }
            }

            if (lit is not null || day >= UnlitFromDay)
            {
                least = Math.Min(least, zone);
                below += zone < season.Control.HeapFloorC ? tickHours : 0;
            }
        }

        trace?.Hours.Add(plant.Snapshot());
        return new Outcome(
            cold, below, Math.Max(0, season.Control.HeapFloorC - least), least, plant.Heap.Ledger.DrawnJ / 3.6e6, lit);
    }

    private sealed class MarkMaker(Plant plant, Trace? trace)
    {
        private double _flow;
        private double _blower;
        private double _load;
        private bool _held;
        private int _count;
        private Mark _open;

        public void Begin()
        {
            if (trace is not null)
            {
                _open = new Mark(
                    plant.Sky, plant.Heap.WallC, plant.Heap.WallWPerK, plant.Heap.DuctShellC, plant.Heap.DrumC, plant.TankC,
                    plant.HouseC, plant.Heap.ActiveZoneC, 0, 0, 0, false);
            }
        }

        public void Add(double blowerDuty, bool held, int perMark)
        {
            if (trace is null)
            {
                return;
            }

            _flow += plant.FlowLitresPerMinute;
            _blower += blowerDuty;
            _load += plant.PumpW + plant.BlowerW;
            _held |= held;
            _count++;
            if (_count == perMark)
            {
                trace.Marks.Add(_open with
                {
                    FlowLitresPerMinute = _flow / perMark,
                    BlowerDuty = _blower / perMark,
                    LoadW = _load / perMark,
                    Held = _held,
                });
                (_flow, _blower, _load, _held, _count) = (0, 0, 0, false, 0);
            }
        }
    }
}
