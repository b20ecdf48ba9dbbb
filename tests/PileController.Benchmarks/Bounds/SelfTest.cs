using PileController.Control;
using PileController.Physics.Heaps;
using PileController.Physics.Plants;
using PileController.Seasons;
using PileController.Settings;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// Holds the pieces of the bound against the plant before anything is found with them: the law of a cell against the
/// heap, prices against seasons lived again with a little more heat, the duty's limits, the ceiling against a plan.
/// </summary>
internal static class SelfTest
{
    private const int Days = 120;
    private const int ShortDays = 100;
    private const int AtHour = 75 * 24;
    private const double ProbeJ = 2e6;

    // Prices leave out the water under way and how conductivities change with warmth.
    private const double PriceTolerance = 0.15;

    // The sun is followed by the six marks of an hour.
    private const double ChargeTolerance = 0.01;

    /// <summary>A sentence for each piece that does not hold.</summary>
    public static IReadOnlyList<string> Faults()
    {
        SeasonPlan season = BoundSeasons.Of(PileSettings.AlderBank, null, null, Days, "New York", TextWriter.Null)![0].Plan with { Days = Days };
        Schedule nights = Schedule.Of(Days * 24, h => h % 24 is >= 20 or < 7 ? (0.4, 0.3) : (0, 0));
        Trace trace = new();
        Outcome lived = Replay.Run(season, nights, Replay.QuickSeconds, trace);
        return [.. Cells(season, trace), .. PricesHold(season, nights, trace), .. BatteryHolds(season, nights, trace), .. Duties(season), .. CeilingHolds(season, lived), .. Keys(season)];
    }

    /// <summary>A sentence for each draw rule that does better than the certificate allows, on a season that ends after the coldest days.</summary>
    public static IReadOnlyList<string> RuleFaults()
    {
        BoundSeason winter = BoundSeasons.Of(PileSettings.AlderBank, null, null, ShortDays, "New York", TextWriter.Null)![0];
        SeasonPlan season = winter.Plan with { Days = ShortDays, Control = winter.Plan.Control with { TickSeconds = 60 } };
        Trace undrawn = new();
        Replay.Run(season, Schedule.Nothing(ShortDays * 24), Replay.ExactSeconds, undrawn);
        double certificate = Ceiling.ColdDegreeHours(season, undrawn);
        return
        [
            .. Enum.GetValues<DrawPolicy>().Select(policy => Starts.Live(season, policy))
                .Where(run => run.ColdDegreeHours < certificate)
                .Select(run => $"The certificate says no plan goes below {certificate:F1} K·h; {run.Name} came to {run.ColdDegreeHours:F1} K·h."),
        ];
    }

    private static IEnumerable<string> Keys(SeasonPlan season)
    {
        string key = BoundCache.Key(season, 1);
        SeasonPlan told = season with { Control = season.Control with { CoilWPerK = 2 * season.Control.CoilWPerK } };
        SeasonPlan house = season with
        {
            Build = season.Build with { House = season.Build.House with { GlazingAreaM2 = 2 * season.Build.House.GlazingAreaM2 } },
        };
        SeasonPlan minimum = season with { Control = season.Control with { HouseMinimumC = season.Control.HouseMinimumC + 1 } };
        SeasonPlan colder = season with { Weather = season.Weather.Warmer(-1) };
        if (BoundCache.Key(told, 1) != key)
        {
            yield return "A bound hangs on what the controller is told of the coil.";
        }

        foreach ((string what, string other) in ((string, string)[])
            [
                ("house", BoundCache.Key(house, 1)), ("minimum", BoundCache.Key(minimum, 1)), ("weather", BoundCache.Key(colder, 1)),
                ("days", BoundCache.Key(season with { Days = Days - 1 }, 1)), ("rounds", BoundCache.Key(season, 2)),
            ])
        {
            if (other == key)
            {
                yield return $"Another {what} has the same bound.";
            }
        }
    }

    private static IEnumerable<string> Cells(SeasonPlan season, Trace trace)
    {
        HeapState before = trace.Hours[AtHour].Heap;
        Mark mark = trace.Marks[AtHour * Trace.MarksAnHour];
        Heap heap = new(season.Build.Heap, before);
        HeapForm form = new(season.Build.Heap);
        CellLife life = new(season.Build.Heap);
        life.Under(mark.Sky.OutsideC, mark.Sky.Humidity, before.AgeSeconds);
        heap.StepSlow(Heap.SlowStepSeconds, new HeapSite(
            mark.Sky.OutsideC, mark.Sky.Humidity, mark.Sky.WindMPerS, season.Build.House.GroundC, 0));
        HeapLedger after = heap.Ledger;
        double burnt = after.BurntKg - before.Ledger.BurntKg;
        double reckoned = 0;
        double net = 0;
        for (int i = 0; i < form.Cells; i++)
        {
            CellRates rates = life.Of(HeapForm.At(before, i), form.VolumeM3[i], form.PathM[i]);
            reckoned -= Heap.SlowStepSeconds * (rates.FastKgPerS + rates.SlowKgPerS);
            net += Heap.SlowStepSeconds * rates.HeatW;
        }

        double air = after.AirOutJ - before.Ledger.AirOutJ - (after.AirInJ - before.Ledger.AirInJ);
        double heat = after.GeneratedJ - before.Ledger.GeneratedJ - air;
        if (Apart(reckoned, burnt) > 1e-6 || Apart(net, heat) > 1e-6)
        {
            yield return $"The law of a cell burns {reckoned:G6} kg and nets {net:G6} J a minute; the heap {burnt:G6} kg and {heat:G6} J.";
        }
    }

    private static IEnumerable<string> PricesHold(SeasonPlan season, Schedule plan, Trace trace)
    {
        int hours = plan.Hours;
        Pricing pricing = new(season);
        Prices prices = pricing.Of(trace, new double[hours], 0.05, 1);
        PlantState state = trace.Hours[AtHour];
        double Cold(PlantState from) => Replay.Run(season, plan, Replay.QuickSeconds, null, from, AtHour).ColdDegreeHours;
        double undisturbed = Cold(state);
        IEnumerable<(string, double, PlantState)> probes =
        [
            ("house floor", prices.Floor[AtHour], state with { House = state.House with
            {
                FloorC = state.House.FloorC + (ProbeJ / (season.Build.House.FloorJPerM2K * season.Build.House.FloorAreaM2)),
            } }),
            ("tank", prices.Tank[AtHour], state with { Loop = state.Loop with
            {
                TankC = state.Loop.TankC + (ProbeJ / new SteadyLoop(season.Build.Loop, season.Build.Heap).TankJPerK),
            } }),
            ("turns", prices.Cell[AtHour][pricing.Form.CoilShell], Warmed(state, pricing.Form.CoilShell)),
            ("core", prices.Cell[AtHour][0], Warmed(state, 0)),
            ("rind", prices.Cell[AtHour][pricing.Form.Shells - 1], Warmed(state, pricing.Form.Shells - 1)),
        ];
        double greatest = prices.Cell[AtHour].Max();
        foreach ((string where, double price, PlantState warmed) in probes)
        {
            double lived = (undisturbed - Cold(warmed)) / ProbeJ;
            if (Math.Abs(price - lived) > PriceTolerance * Math.Max(Math.Abs(lived), 0.2 * greatest))
            {
                yield return $"A joule in the {where} is priced {price:G4} K·h; lived again with more it is worth {lived:G4} K·h.";
            }
        }
    }

    private static PlantState Warmed(PlantState state, int cell)
    {
        double[] heat = [.. state.Heap.EnthalpyJ];
        heat[cell] += ProbeJ;
        return state with { Heap = state.Heap with { EnthalpyJ = heat } };
    }

    // Nothing is held back in this season, so that the battery followed by the hour is the battery that was lived.
    private static IEnumerable<string> BatteryHolds(SeasonPlan season, Schedule plan, Trace trace)
    {
        Charging charging = new(season, trace, plan, new PowerTaken(season));
        double apart = Enumerable.Range(0, plan.Hours).Max(h => Math.Abs(charging.Charge[h] - trace.Hours[h + 1].BatteryCharge));
        if (apart > ChargeTolerance)
        {
            yield return $"The battery followed by the hour strays by {apart:F3} of its charge from the one that was lived.";
        }
    }

    private static IEnumerable<string> Duties(SeasonPlan season)
    {
        DutyTrack track = new(ControlSettings.UsualLeastDuty, season.Control.LeastRunSeconds, season.Control);
        Random random = new(7);
        double before = 0;
        double since = double.PositiveInfinity;
        double level = 0;
        for (int i = 0; i < 100_000; i++)
        {
            level = i % 7 == 0 ? Math.Max(0, (random.NextDouble() * 1.4) - 0.2) : level;
            double duty = track.Next(level, i % 360 * 10, false, 10);
            bool switched = duty > 0 != before > 0;
            bool slewed = before <= 0 || duty <= 0
                || Math.Abs(duty - before) <= (season.Control.DutySlewPerSecond * 10) + 1e-12;
            double held = before > 0 ? season.Control.LeastRunSeconds : season.Control.LeastRestSeconds;
            if (!slewed || duty is > 0 and < ControlSettings.UsualLeastDuty or > 1 || (switched && since < held))
            {
                yield return $"A duty went from {before} to {duty} after {since} s, against its limits.";
                yield break;
            }

            since = switched ? 10 : since + 10;
            before = duty;
        }
    }

    private static IEnumerable<string> CeilingHolds(SeasonPlan season, Outcome lived)
    {
        Trace undrawn = new();
        Replay.Run(season, Schedule.Nothing(Days * 24), Replay.ExactSeconds, undrawn);
        double certificate = Ceiling.ColdDegreeHours(season, undrawn);
        if (!(certificate <= lived.ColdDegreeHours))
        {
            yield return $"The certificate says no plan goes below {certificate:F1} K·h; one came to {lived.ColdDegreeHours:F1} K·h.";
        }
    }

    private static double Apart(double a, double b) => Math.Abs(a - b) / Math.Max(1e-12, Math.Abs(b));
}
