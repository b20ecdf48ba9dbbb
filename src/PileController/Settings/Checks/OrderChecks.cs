namespace PileController.Settings.Checks;

/// <summary>Pairs of settings of which one must be below the other.</summary>
internal static class OrderChecks
{
    public static readonly Check[] All =
    [
        Below("control.floor", s => s.Control.HeapFloorC, "control.lit", s => s.Control.HeapLitC, "°C"),
        Below("control.house.minimum", s => s.Control.HouseMinimumC, "control.house.night", s => s.Control.HouseNightC, "°C"),
        NotAbove("control.house.night", s => s.Control.HouseNightC, "control.house.day", s => s.Control.HouseDayC, "°C"),
        Below("control.house.day", s => s.Control.HouseDayC, "house.ventAbove", s => s.House.VentAboveC, "°C"),
        Below("house.ventAbove", s => s.House.VentAboveC, "interlocks.houseMost", s => s.Control.Limits.HouseMostC, "°C"),
        Below("control.house.dayBegins", s => s.Control.DayBeginsHour, "control.house.nightBegins", s => s.Control.NightBeginsHour, "h after midnight"),
        Below("control.pump.leastFlow", s => s.Control.LeastFlowLitresPerMinute, "control.pump.mostFlow", s => s.Control.MostFlowLitresPerMinute, "L/min"),
        Below("interlocks.noFlow", s => s.Control.Limits.NoFlowLitresPerMinute, "control.pump.leastFlow", s => s.Control.LeastFlowLitresPerMinute, "L/min"),
        NotAbove("control.pump.mostFlow", s => s.Control.MostFlowLitresPerMinute, "loop.pumpFreeFlow", s => s.Loop.PumpFreeFlowLitresPerMinute, "L/min"),
        Below("loop.staticLift", s => s.Loop.StaticLiftM, "loop.pumpShutoffHead", s => s.Loop.PumpShutoffHeadM, "m"),
        NotAbove("control.tick", s => s.Control.TickSeconds, "interlocks.noFlowTime", s => s.Control.Limits.NoFlowSeconds, "s"),
        Below("control.cutout.off", s => s.Control.CutoutOffC, "control.cutout.on", s => s.Control.CutoutOnC, "°C"),
        Below("interlocks.batteryEmpty", s => s.Control.Limits.BatteryEmptyV, "interlocks.batteryLow", s => s.Control.Limits.BatteryLowV, "V"),
        Below("heap.coil.innerDiameter", s => 1000 * s.Heap.Coil.InnerDiameterM, "heap.coil.outerDiameter", s => 1000 * s.Heap.Coil.OuterDiameterM, "mm"),
        Below("plan.wish.from", s => s.Plan.Wish.FromC, "plan.wish.to", s => s.Plan.Wish.ToC, "°C"),
        Below("heap.coil.radius", s => s.Heap.Coil.RadiusM, "heap.radius", s => s.Heap.RadiusM, "m"),
        Below("heap.ducts.radius", s => s.Heap.Duct.RadiusM, "heap.radius", s => s.Heap.RadiusM, "m"),
    ];

    private static Check Below(
        string low, Func<PileSettings, double> lowValue, string high, Func<PileSettings, double> highValue, string unit) =>
        Order(low, lowValue, high, highValue, unit, (l, h) => l < h, ("below", "above"));

    private static Check NotAbove(
        string low, Func<PileSettings, double> lowValue, string high, Func<PileSettings, double> highValue, string unit) =>
        Order(low, lowValue, high, highValue, unit, (l, h) => l <= h, ("at most", "at least"));

    private static Check Order(
        string low, Func<PileSettings, double> lowValue, string high, Func<PileSettings, double> highValue, string unit,
        Func<double, double, bool> holds, (string Low, string High) words) =>
        new([low, high], (s, reading) =>
        {
            if (holds(lowValue(s), highValue(s)))
            {
                return [];
            }

            // The one that stands in the file is the one its writer can change; of two, the first named.
            bool blameHigh = reading.LineOf(low) is null && reading.LineOf(high) is not null;
            string path = blameHigh ? high : low;
            string given = reading.GivenAt(path) ?? $"{(blameHigh ? highValue(s) : lowValue(s)):G6} {unit} by default";
            string allowed = blameHigh
                ? $"{words.High} {low}, {lowValue(s):G6} {unit}"
                : $"{words.Low} {high}, {highValue(s):G6} {unit}";
            return [new Finding(path, given, allowed)];
        });
}
