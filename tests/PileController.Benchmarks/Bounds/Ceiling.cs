using PileController.Physics;
using PileController.Physics.Fluids;
using PileController.Physics.Heaps;
using PileController.Physics.Houses;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;
using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// The certificate from the other side: cold degree-hours that no plan can go below. It is the house's own exact equations
/// under more heat than any plan can bring, so the relaxed problem is solved by looking at it.
/// </summary>
/// <remarks>
/// Why nothing goes below it. (1) Nothing is drawn before the heap has lit, so all plans share the hours until then.
/// (2) The house is monotone: air warms floor and floor air, and all else in the balance of either (glass, curtain, vents,
/// sun) hangs on its own temperature and on the weather; so more heat leaves it as warm or warmer ever after.
/// (3) No cell is ever hotter than the hotter of 71.6 °C, where the microbes make nothing, and the hottest cell there was
/// when the heap lit; neither is any water, nor the air of the ducts. (4) The pipe gives at most its conductance times the
/// difference from the house air, the tank likewise, the closed duct at most what the bed round it hands on to its full flow.
/// What is left out, each in the plan's favour: that the bed at the pipe cools, what the heap holds and makes, its floor,
/// the battery, the flow, the lines' losses and the time water takes. So it is loose where a cold spell outlasts what the
/// bed can hand on: there the gap to the plan is not all the plan's fault. No budget of the heap's heat is set beside it: one
/// that holds for every plan must start from a bed as hot as any can be and let all of it but the active zone go cold, which
/// at Alder Bank is several times what a cold spell takes, so it would seldom bind. One that binds has to follow the active
/// zone itself under every plan, and that is not proven here.
/// </remarks>
internal static class Ceiling
{
    private const double CondenserYield = 0.6;

    /// <summary>Fewest cold degree-hours any plan can come to, K·h.</summary>
    /// <param name="season">The season.</param>
    /// <param name="undrawn">The exact run with nothing drawn.</param>
    public static double ColdDegreeHours(SeasonPlan season, Trace undrawn)
    {
        int hours = undrawn.Hours.Count - 1;
        // Draws may begin at any tick of the hour in which the heap lights, so the whole of that hour is given away.
        int lit = Math.Max(0, Math.Min(undrawn.LitHour, hours) - 1);
        PlantState state = undrawn.Hours[lit];
        HouseBuild build = season.Build.House;
        Dwelling house = new(build, state.House, default);
        double hottestC = Math.Max(Microbes.Thermophilic.MostC, HottestC(state));
        double perK = GivesWPerK(season);
        double steam = season.Build.Heap.Duct.ThroughHeap && season.Control.BlowerFitted ? MostSteamW(season, hottestC) : 0;
        double cold = ColdBefore(season, lit);
        double tick = Replay.ExactSeconds;
        long at = state.UtcMilliseconds;
        long end = at + ((hours - lit) * 3_600_000L);
        while (at < end)
        {
            at += (long)(tick * 1000);
            WeatherSample sky = season.Weather.At(at);
            double given = tick * ((perK * Math.Max(0, hottestC - house.AirC)) + steam);
            house.Step(tick, given, sky.OutsideC, sky.SunWPerM2);
            cold += Math.Max(0, season.Control.HouseMinimumC - house.AirC) * tick / 3600;
        }

        return cold;
    }

    private static double GivesWPerK(SeasonPlan season)
    {
        DuctBuild duct = season.Build.Heap.Duct;
        bool closed = season.Control.BlowerFitted && duct.LengthM > 0 && !duct.ThroughHeap;
        return (season.Build.Loop.HousePipeM * season.Build.Loop.HousePipeWPerMK) + season.Build.Loop.TankLossWPerK
            + (closed ? ClosedDuctWPerK(duct) : 0);
    }

    // What the air takes grows with its flow, so that no other duty takes more.
    private static double ClosedDuctWPerK(DuctBuild duct)
    {
        double carried = duct.FullFlowM3PerS * DuctBed.AirJPerM3K;
        return carried > 0 ? carried * (1 - Portable.Exp(-DuctBed.ConductanceWPerK(duct) / carried)) : 0;
    }

    // All the air of the full blower saturated at the hottest, from dry air at −40 °C.
    private static double MostSteamW(SeasonPlan season, double hottestC)
    {
        double ratio = MoistAir.SaturatedHumidityRatio(hottestC);
        double joulesPerKg = (Stuff.GasJPerKgK * (hottestC + 40)) + (ratio * (Stuff.VapourJPerKg + (Stuff.VapourJPerKgK * hottestC)));
        const double densestKgPerM3 = 1.52;
        return CondenserYield * season.Build.Heap.Duct.FullFlowM3PerS * densestKgPerM3 * joulesPerKg;
    }

    private static double HottestC(PlantState state)
    {
        double hottest = state.Heap.DrumC;
        for (int i = 0; i < state.Heap.EnthalpyJ.Length; i++)
        {
            hottest = Math.Max(hottest, HeapForm.At(state.Heap, i).Celsius);
        }

        return hottest;
    }

    private static double ColdBefore(SeasonPlan season, int lit) => lit == 0
        ? 0
        : Replay.Run(season, Schedule.Nothing(season.Days * 24), Replay.ExactSeconds, null, null, 0, lit).ColdDegreeHours;
}
