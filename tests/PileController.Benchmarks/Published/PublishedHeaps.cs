using PileController.Physics.Heaps;

namespace PileController.Benchmarks.Published;

/// <summary>The woodchip heaps of the reference. Claims second-hand or from memory are marked so and gate nothing.</summary>
internal static class PublishedHeaps
{
    private const string NewYork = "new-york-daily-2012-2013.csv";
    private const string Seattle = "seattle-daily-2012-2015.csv";
    private const double GallonLitres = 3.785411784;

    private static readonly DateOnly November = new(2012, 11, 1);
    private static readonly DuctBuild NoDuct = new() { LengthM = 0 };
    private static readonly CoilBuild NoCoil = new() { LengthM = 0 };
    private static readonly PublishedDraw NoDraw = new(0, 0, (10, 10), 0);

    public static IReadOnlyList<PublishedHeap> All { get; } =
    [
        new(
            "five-ton trial heap", "Mother's Compost Heat Experiment update, May/June 1980",
            "11 m³, a tenth of the dry mass quick (4 chips to 1 manure), no draw, New York's winter from 1 November",
            Round(1.5, 1.6, 4536) with { FastFraction = 0.10 }, NoDraw, NewYork, November, 120,
            [
                new("CMP-065", "core at its hottest", "°C", 48.9, 48.9, r => r.PeakCoreC),
                new("CMP-065", "near its hottest after", "d", 12, 12, r => r.PeakDay),
                new("CMP-066", "stays near it for", "weeks", 5.5, 5.5, r => r.WeeksNearPeak),
            ]),
        new(
            "second trial heap", "Compost Water Heater, July/Aug 1981",
            "size not in the row: 9 t, 23 m³; no draw, New York's winter from 1 November",
            Round(1.9, 2.0, 9000), NoDraw, NewYork, November, 135,
            [
                new("CMP-067", "core, first two months hot", "°C", 60, 60, r => r.CoreC(15, 75)),
                new("CMP-067", "core, two months more", "°C", 54.4, 54.4, r => r.CoreC(75, 135)),
            ]),
        new(
            "8.5 cubic yard heap", "Grower-grant report: heating hoophouses with compost, Sept 2010",
            "350 kg/m³, hose 16/22 mm half way out, inlet 60 to 75 °F, drawn from day 15, New York from 1 October",
            Round(1.25, 1.32, 2275) with { FastFraction = 0.10, Coil = new CoilBuild { RadiusM = 0.7, LengthM = 76.2, OuterDiameterM = 0.022, InnerDiameterM = 0.016 } },
            new(0.665 * GallonLitres, 10, (15.6, 23.9), 15), NewYork, new DateOnly(2012, 10, 1), 60,
            [
                new("CMP-069", "heap at its hottest", "°C", 71.1, 71.1, r => r.PeakCoreC),
                new("CMP-069", "water leaving, first day", "°C", 29.4, 29.4, r => r.OutletC(15, 16)),
                new("CMP-069", "water leaving, days 5 to 20 of drawing", "°C", 29.4, 29.4, r => r.OutletC(20, 35)),
                new("CMP-071", "turns after rest, 30 days into 10 h a day, above 45 °C: recovered", "°C", 45, 71.1, r => r.RestedC(45)),
            ]),
        new(
            "26 m³ cylinder", "SARE final report FW15-057",
            "0.4 m of bales round a body of 1.6 m by 2.1 m, 350 kg/m³, 1/2 in pipe of 90 m at 1 gal/min all day from day 20, New York from 1 October",
            Round(1.6, 2.1, 5900) with { CoverThicknessM = 0.4, Coil = new CoilBuild { RadiusM = 0.9, LengthM = 90 } },
            new(GallonLitres, 24, (8, 14), 20), NewYork, new DateOnly(2012, 10, 1), 150,
            [
                new("CMP-073", "second heap held from October to February: 40 °C or more for", "d", 150, 150, r => r.DaysHeld(40) ?? 0),
            ]),
        new(
            "50 t brushwood heap", "Italian summary of published brushwood-heap results; flow from memory",
            "535 kg/m³ (Permaculture News, 2011), 3 m high, 600 m of 1 in pipe half way out, 4 L/min from 10 °C all day from day 30, Seattle",
            Round(3.15, 3.0, 50_000) with { CoverThicknessM = 0.1, Shells = 20, Coil = Inch(1.9, 600) },
            new(4, 24, (10, 10), 30), Seattle, November, 180,
            [
                new("CMP-057", "water leaving, six months", "°C", 60, 60, r => r.OutletC(30, 180)),
                new("CMP-064", "heap", "°C", 58, 60, r => r.ZoneC(30, 180)),
                new("CMP-060", "heat drawn (claim, flow from memory)", "kW", 13.94, 13.94, r => r.DrawnWatts / 1000 * 180 / 150),
                new("CMP-062", "drawn per dry matter (claim, from memory)", "MJ/kg", 8.81, 8.81, r => r.Ledger.DrawnJ / r.DryKg / 1e6),
            ]),
        new(
            "120 t brushwood heap", "Italian summary of published brushwood-heap results",
            "535 kg/m³, 3.5 m high, 900 m of 1 in pipe half way out, 4 L/min from 10 °C all day from day 30, Seattle, 540 days",
            Round(4.5, 3.5, 120_000) with { CoverThicknessM = 0.1, Shells = 24, Coil = Inch(2.7, 900) },
            new(4, 24, (10, 10), 30), Seattle, November, 540,
            [
                new("CMP-058", "water leaving, eighteen months", "°C", 58, 58, r => r.OutletC(30, 540)),
                new("CMP-058", "water leaving, last three months", "°C", 58, 58, r => r.OutletC(450, 540)),
            ]),
        new(
            "ten-ton heap, averages and rules", "Smith, Aber, Rynk 2015 (44 systems of any stuff); mass loss: common practice, no source",
            "Alder Bank's heap with its coil, 1 gal/min from 10 to 20 °C all day from day 15, New York from 1 November",
            new HeapBuild { DrumLitres = 0, Duct = NoDuct }, new(GallonLitres, 24, (10, 20), 15), NewYork, November, 180,
            [
                new("CMP-044, -046", "recovered: laboratories to pilot plants", "kJ/kg DM", 1159, 3899, r => r.Ledger.DrawnJ / r.DryKg / 1000),
                new("CMP-048", "recovered: commercial plants", "kJ/kg DM", 7084, 7084, r => r.Ledger.DrawnJ / r.DryKg / 1000),
                new("TRD-008", "dry matter lost, if the ton or two were all dry", "kg", 907, 1814, r => r.Ledger.BurntKg),
                new("CMP-106, -107", "heat made, the same rule", "W", 1132, 2263, r => r.GeneratedWatts),
            ]),
    ];

    private static HeapBuild Round(double radiusM, double heightM, double wetKg) => new()
    {
        RadiusM = radiusM,
        HeightM = heightM,
        WetMassKg = wetKg,
        DrumLitres = 0,
        Coil = NoCoil,
        Duct = NoDuct,
    };

    private static CoilBuild Inch(double radiusM, double lengthM) => new()
    {
        RadiusM = radiusM,
        LengthM = lengthM,
        OuterDiameterM = 0.028575,
        InnerDiameterM = 0.0218,
    };
}
