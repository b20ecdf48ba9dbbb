using System.Globalization;
using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>What a plan does: when it draws, how low the heap goes, what is drawn while the house is warm enough.</summary>
internal static class Habits
{
    public static string Of(SeasonPlan season, Schedule plan)
    {
        Trace trace = new();
        Outcome lived = Replay.Run(season, plan, Replay.ExactSeconds, trace);
        double min = season.Control.HouseMinimumC, floor = season.Control.HeapFloorC;
        int full = 0, fullWarm = 0, on = 0, air = 0, airAlone = 0, warm2 = 0;
        double drawn = 0, coil = 0, drum = 0, duct = 0, warmKWh = 0, warm2KWh = 0;
        int hours = plan.Hours;
        double[] cold = new double[hours];
        double[] kWh = new double[hours];
        for (int h = 0; h < hours; h++)
        {
            for (int m = 0; m < 6; m++)
            {
                cold[h] += Math.Max(0, min - trace.Marks[(h * 6) + m].HouseC) / 6;
            }

            var a = trace.Hours[h].Heap.Ledger;
            var b = trace.Hours[h + 1].Heap.Ledger;
            kWh[h] = (b.DrawnJ - a.DrawnJ) / 3.6e6;
            coil += (b.CoilJ - a.CoilJ) / 3.6e6;
            drum += (b.DrumJ - a.DrumJ) / 3.6e6;
            duct += (b.DuctJ - a.DuctJ) / 3.6e6;
        }

        double[] lower = new double[7];
        double[] byHour = new double[24];
        double[] byClock = new double[24];
        int first = (int)((season.StartUtcMilliseconds / 3_600_000) + (season.OffsetMinutes / 60)) % 24;
        System.Text.StringBuilder days = new();
        for (int h = 0; h < hours; h++)
        {
            double house = trace.Hours[h].House.AirC;
            on += plan.Water[h] > 0.05 ? 1 : 0;
            full += plan.Water[h] > 0.9 ? 1 : 0;
            fullWarm += plan.Water[h] > 0.9 && house > min ? 1 : 0;
            air += plan.Air[h] > 0.05 ? 1 : 0;
            airAlone += plan.Air[h] > 0.05 && plan.Water[h] <= 0.05 ? 1 : 0;
            drawn += kWh[h];
            warmKWh += house > min ? kWh[h] : 0;
            warm2 += house > min + 2 && plan.Water[h] > 0.05 ? 1 : 0;
            warm2KWh += house > min + 2 ? kWh[h] : 0;
            byClock[(first + h) % 24] += kWh[h];
            bool soon = false;
            int next = 0;
            for (int k = h; k < Math.Min(hours, h + 48) && !soon; k++)
            {
                soon = cold[k] > 0.05;
                next = k - h;
            }

            byHour[soon ? Math.Min(23, next) : 23] += kWh[h];
            if (h % 24 == 0)
            {
                double dk = 0, dc = 0, w = 0, ai = 0;
                double outMin = 99;
                for (int k = h; k < Math.Min(hours, h + 24); k++)
                {
                    dk += kWh[k];
                    dc += cold[k];
                    w += plan.Water[k];
                    ai += plan.Air[k];
                    outMin = Math.Min(outMin, trace.Marks[k * 6].Sky.OutsideC);
                }

                days.AppendLine(string.Create(CultureInfo.InvariantCulture, $"day {h / 24,3} out min {outMin,6:F1} zone {trace.Marks[h * 6].ActiveZoneC,5:F1} wall {trace.Marks[h * 6].WallC,5:F1} drum {trace.Marks[h * 6].DrumC,5:F1} drawn {dk,5:F1} kWh cold {dc,6:F1} K·h water {w,5:F1} h air {ai,5:F1} h"));
            }
        }

        return string.Create(CultureInfo.InvariantCulture, $"""
            cold {lived.ColdDegreeHours:F1} K·h, drawn {drawn:F0} kWh (coil {coil:F0}, drum {drum:F0}, duct {duct:F0}), least zone {lived.LeastActiveZoneC:F2} (floor {floor}), lit {lived.LitOnDay:F1}
            hours water on {on}, at full {full}, of these with house above the minimum {fullWarm}; air on {air}, air alone {airAlone}
            kWh while house > min {warmKWh:F0}; while > min + 2 K {warm2KWh:F0} (hours {warm2})
            kWh by hours to the next cold hour (0..22, 23 = later or none within 48 h): {string.Join(' ', byHour.Select(v => v.ToString("F0", CultureInfo.InvariantCulture)))}
            kWh by hour of the day: {string.Join(' ', byClock.Select(v => v.ToString("F0", CultureInfo.InvariantCulture)))}
            {days}
            """);
    }
}
