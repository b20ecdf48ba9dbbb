using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Physics.Heaps;
using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>calc through-heap: air drawn through the heap itself.</summary>
internal static class CalcThroughHeap
{
    private const string Caution =
        "heap air carries carbon dioxide, ammonia and spores and little oxygen: do not let it out where people work; local codes and licensed trades decide";

    private static readonly Option<double> Flow = AirOptions.Flow();

    private static readonly Option<double> Inlet = AirOptions.Inlet();

    private static readonly Option<double> InletHumidity = Ask.Of<double>(
        "--inlet-humidity", "Relative humidity of that air, % (0.1 to 100).", HumidityText.TryRead).Needed();

    private static readonly Option<double> Heap = AirOptions.Heap();

    private static readonly Option<double> House = Ask.Quantity(
        "--house", "Temperature to which the air is cooled afterwards; not cooled unless given.", "°C", Dimension.Temperature, 0, 60).Unless(double.NaN);

    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "through-heap", "Heat, water and oxygen of air drawn through the heap, beside the same air in a closed duct.",
            "PileController calc through-heap --flow \"8 ft3/min\" --inlet \"50 °F\" --inlet-humidity 50 --heap \"140 °F\" --house \"50 °F\"")
        {
            Flow, Inlet, InletHumidity, Heap, House, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        double flow = parse.GetRequiredValue(Flow) / 3600;
        double heap = parse.GetRequiredValue(Heap);
        double house = parse.GetValue(House);
        if (house > heap)
        {
            parse.InvocationConfiguration.Error.WriteLine(
                $"--house is {house:0.##} °C; allowed: at most --heap, {heap:0.##} °C, since the air is cooled there");
            return ExitCodes.WrongUse;
        }

        ThroughAir air = ThroughAir.Of(flow, parse.GetRequiredValue(Inlet), parse.GetRequiredValue(InletHumidity) / 100, heap);
        Condensed? cooled = double.IsNaN(house) ? null : air.CooledTo(house);
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, ThroughHeapAnswer.Of(air, cooled, Caution));
        }
        else
        {
            Answer.WriteRows(parse, Rows(air, cooled, flow, house));
        }

        return ExitCodes.Done;
    }

    private static List<(string, string)> Rows(ThroughAir air, Condensed? cooled, double flow, double house)
    {
        List<(string, string)> rows =
        [
            ("air", $"{Show.Both(s => Show.AirFlow(flow, s))} at {Show.Both(s => Show.Temperature(air.InletC, s))}, leaving saturated at {Show.Both(s => Show.Temperature(air.HeapC, s))}"),
            ("through the heap, sensible", Show.Both(s => Show.Power(air.SensibleWatts, s))),
            ("through the heap, latent", Show.Both(s => Show.Power(air.LatentWatts, s))),
            ("through the heap, in all", Show.Both(s => Show.Power(air.TotalWatts, s))),
            ("dry in a closed duct", $"{Show.Both(s => Show.Power(air.ClosedDuctWatts, s))}, at most: warmed to the heap's temperature"),
        ];
        if (air.HeapC > air.InletC)
        {
            rows.Add(("moist against dry", $"{air.TotalWatts / air.ClosedDuctWatts:F1} times as much from the same cubic foot, and as much more out of the heap"));
        }

        rows.Add(("water the heap loses", $"{Show.Both(s => Show.Mass(air.WaterLostKgPerDay, s))} a day; give it back, or the heap dries and dies"));
        rows.Add(("oxygen carried in", $"{Show.Both(s => Show.Mass(air.OxygenSuppliedKgPerDay, s))} a day, enough for {Show.Both(s => Show.Power(air.HeatOfOxygenWatts, s))} of heat with 5 % left in the air"));
        rows.Add(("carbon dioxide carried off", $"{Show.Both(s => Show.Mass(air.CarbonDioxideKgPerDay, s))} a day at most"));
        if (cooled is { } given)
        {
            rows.Add(($"cooled to {Show.Both(s => Show.Temperature(house, s))}", $"gives {Show.Both(s => Show.Power(given.ReleasedWatts, s))} and {Show.Both(s => Show.Volume(given.CondensateLitresPerDay, s))} of condensate a day"));
        }

        rows.Add(("caution", Caution));
        return rows;
    }

    private sealed record ThroughHeapAnswer(
        double SensibleWatts, double LatentWatts, double WaterLostKgPerDay, double OxygenSuppliedKgPerDay,
        double TotalWatts, double SensibleBtuPerHour, double LatentBtuPerHour, double TotalBtuPerHour,
        double ClosedDuctWatts, double ClosedDuctBtuPerHour, double HeatOfOxygenWatts, double CarbonDioxideKgPerDay,
        double? CondensateLitresPerDay, double? ReleasedWatts, double? ReleasedBtuPerHour, IReadOnlyList<string> Cautions)
    {
        public static ThroughHeapAnswer Of(ThroughAir air, Condensed? cooled, string caution) => new(
            air.SensibleWatts, air.LatentWatts, air.WaterLostKgPerDay, air.OxygenSuppliedKgPerDay,
            air.TotalWatts, air.SensibleWatts / Customary.BtuPerHour, air.LatentWatts / Customary.BtuPerHour, air.TotalWatts / Customary.BtuPerHour,
            air.ClosedDuctWatts, air.ClosedDuctWatts / Customary.BtuPerHour, air.HeatOfOxygenWatts, air.CarbonDioxideKgPerDay,
            cooled?.CondensateLitresPerDay, cooled?.ReleasedWatts, cooled?.ReleasedWatts / Customary.BtuPerHour, [caution]);
    }
}
