using System.Globalization;
using PileController.Ledgers.Counting;
using PileController.Plans.Sketch;
using PileController.Units;

namespace PileController.Ledgers.Pages;

/// <summary>The figures of the book in words, for the report and the command line alike.</summary>
internal static class LedgerWords
{
    // A day's heat is told finer than a season's, kWh.
    private const double FineBelowKWh = 100;

    /// <summary>Heat.</summary>
    public static string Heat(double kilowattHours, UnitSystem u) => Heat(kilowattHours, kilowattHours, u);

    /// <summary>Heat by water with its error band, both told as finely.</summary>
    public static string Water(SpanSum sum, UnitSystem u) => $"{Heat(sum.WaterKWh, u)} ± {Heat(sum.WaterErrorKWh, sum.WaterKWh, u)}";

    /// <summary>Electricity is sold by the kWh everywhere.</summary>
    public static string Electricity(double kilowattHours) => $"{Number(kilowattHours, "F1")} kWh";

    /// <summary>Hours.</summary>
    public static string Hours(double hours) => $"{Number(hours, "F0")} h";

    /// <summary>Money.</summary>
    public static string Money(double sum, string money) => $"{Number(sum, "F2")} {money}";

    /// <summary>A mass and how it is known.</summary>
    public static string Mass(MassEntry? mass, UnitSystem u) => mass is null
        ? "not entered"
        : $"{Show.Mass(mass.Kilograms, u)}, {(mass.Known == Known.Measured ? "measured" : "guessed")}{(mass.How is null ? "" : $": {mass.How}")}";

    /// <summary>How much of the heat was not measured.</summary>
    public static string Inferred(SpanSum sum) => sum.InferredHours > 0
        ? $"{Hours(sum.InferredHours)} of {Hours(sum.RunningHours)} with the pump on ({Number(100 * sum.InferredShare, "F0")} %)"
        : "none";

    /// <summary>The coldest night that was kept.</summary>
    public static string Night(SpanSum sum, UnitSystem u) => sum.ColdestNightKept is { } night
        ? $"{night.Date:yyyy-MM-dd}: {Show.Temperature(night.OutsideC, u)} outside, {Show.Temperature(night.HouseC, u)} in the house"
        : "none";

    /// <summary>What a season came to, by rows.</summary>
    public static IReadOnlyList<(string Name, string Value)> Rows(SpanSum sum, UnitSystem u) =>
    [
        ("Heat by water", Water(sum, u)),
        ("Heat by air", $"{Heat(sum.AirKWh, u)}, reckoned"),
        ("Heat not measured", Inferred(sum)),
        ("Electricity", $"pump {Electricity(sum.PumpKWh)}, blower {Electricity(sum.BlowerKWh)}"),
        ("Water moved", Show.Volume(sum.Litres, u)),
        ("Days counted", $"{sum.Days}, {Hours(sum.RecordedHours)} recorded"),
        ("Heap below its floor", Hours(sum.BelowFloorHours)),
        ("Frost guard", Hours(sum.FrostGuardHours)),
        ("Pump starts", sum.PumpStarts.ToString(CultureInfo.InvariantCulture)),
        ("Trips", sum.Trips.ToString(CultureInfo.InvariantCulture)),
        ("Nights kept", $"{sum.NightsKept} of {sum.Nights}"),
        ("Coldest night kept", Night(sum, u)),
    ];

    /// <summary>What a season saved, by rows.</summary>
    public static IReadOnlyList<(string Name, string Value)> Rows(SeasonMoney m) =>
    [
        ($"The heat as {m.Fuel}", $"{Money(m.HeatWorth, m.Money)} ± {Money(m.HeatWorthError, m.Money)}, at {Money(m.PricePerUnit, m.Money)} a {m.SoldBy}"),
        ("Electricity", $"{Money(m.ElectricityCost, m.Money)}, at {Money(m.ElectricityPerKWh, m.Money)} a kWh"),
        ("Saved", Money(m.Saved, m.Money)),
        ("Parts", $"{Money(m.PartsPaid, m.Money)} paid, {Money(m.PartsReused, m.Money)} spared by reuse; not taken off"),
    ];

    /// <summary>What was learned, by rows.</summary>
    public static IReadOnlyList<(string Name, string Value)> Rows(Lessons lessons, UnitSystem u)
    {
        Fading fading = lessons.Fading;
        return
        [
            ("Coil, bed to water", Learned(lessons.Coil, lessons.ToldCoilWPerK, v => PlanShow.PerDegree(v, u))),
            ("Heap's heat capacity", Learned(lessons.HeapCapacity, lessons.ToldHeapJPerK, v => PerDegree(v, u))),
            ("Heap's loss through its cover", lessons.HeapLoss is { } loss ? Factor(loss) : "not learned"),
            ("House's loss", lessons.HouseLoss is { } house
                ? $"{Number(house, "F2")} of what was told ({PlanShow.PerDegree(lessons.ToldHouseLossWPerK, u)}), from {lessons.HouseHours} h" : "not learned"),
            ("Best week", fading is { BestWeekWatts: { } best, BestWeekEndsOn: { } ends } ? $"{Show.Power(best, u)} net, to {ends:yyyy-MM-dd}" : "not known"),
            ("Past its best", fading.FadedOn is { } faded ? $"{faded:yyyy-MM-dd}, the first week below half of the best" : "not yet"),
            ("Last bore a draw", fading.LastBorneOn is { } borne ? $"{borne:yyyy-MM-dd}" : "never"),
        ];
    }

    private static string Learned(LearnedFactor? factor, double told, Func<double, string> show) =>
        factor is null ? "not learned" : $"{Factor(factor)}: {show(told * factor.Factor)}";

    private static string Factor(LearnedFactor learned) =>
        $"{Number(learned.Factor, "F2")} of what was told (give or take a factor {Number(learned.Spread, "F2")})";

    private static string Heat(double kilowattHours, double asFineAsKWh, UnitSystem u) =>
        Math.Abs(asFineAsKWh) < FineBelowKWh ? Show.Energy(kilowattHours, u) : PlanShow.Heat(kilowattHours, u);

    // Heat a degree: a kelvin is 1.8 °F.
    private static string PerDegree(double joulesPerKelvin, UnitSystem u) => u == UnitSystem.Metric
        ? $"{Show.Energy(joulesPerKelvin / 3.6e6, u)}/K"
        : $"{Show.Energy(joulesPerKelvin / 3.6e6 / 1.8, u)} per °F";

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
