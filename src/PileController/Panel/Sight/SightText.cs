using System.Globalization;
using System.Text.RegularExpressions;
using PileController.Control.Modes;
using PileController.Panel.Now;

namespace PileController.Panel.Sight;

/// <summary>What the first look says of a moment, by the names under which <c>index.html</c> has a place for it.</summary>
/// <param name="words">The page's words.</param>
internal sealed partial class SightText(PageWords words)
{
    private const string Judge = "judge";
    private const string View = "now";
    private const string Names = "names";
    private const string Calendar = "calendar";
    private const string House = "house";
    private const string Outside = "outside";

    /// <summary>The texts. Pure.</summary>
    /// <param name="now">The moment.</param>
    /// <param name="american">Whether it is told in °F and BTU.</param>
    public IReadOnlyDictionary<string, string> Of(NowBody now, bool american)
    {
        SightFigures figures = new(american);
        return new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["title"] = words.Say(View, "title"),
            ["asOf"] = words.Say(View, "asOf", Moment(now)),
            ["unit"] = figures.TemperatureUnit,
            ["houseTone"] = now.Judged.HouseTone,
            ["houseSays"] = words.Say(Judge, "HOUSE." + now.Judged.House),
            ["houseAir"] = figures.BareTemperature(Believed(now, House)),
            ["houseMinimum"] = words.Say(Judge, "minimum", figures.OfTemperature(now.HouseMinimumC)),
            ["houseSetPoint"] = words.Say(Judge, "setPoint", figures.OfTemperature(now.HouseSetPointC)),
            ["outside"] = words.Say(Judge, "outside", figures.OfTemperature(Believed(now, Outside))),
            ["heapTone"] = now.Judged.HeapTone,
            ["heapSays"] = words.Say(Judge, "HEAP." + now.Judged.Heap),
            ["heapZone"] = figures.BareTemperature(now.Estimate.ActiveZoneC),
            ["heapGive"] = now.Estimate.UncertaintyK is { } give ? $"± {figures.OfKelvin(give)}" : string.Empty,
            ["heapReserve"] = words.Say(Judge, "floorAndReserve", figures.OfTemperature(now.HeapFloorC), figures.OfEnergy(now.Estimate.ReserveMJ / 3.6)),
            ["heapTrend"] = Trend(now, figures),
            ["heapMakes"] = words.Say(Judge, "makes", figures.OfPower(now.Estimate.GenerationWatts)),
            ["workTone"] = now.Judged.WorkTone,
            ["workSays"] = words.Say(Names, "MODES." + now.Mode),
            ["why"] = Together().Replace(american ? now.WhyAmerican : now.Why, "${figure}\u00a0"),
            ["curb"] = words.Say(View, "limitedBy", Curb(now)),
            ["draws"] = words.Say(View, "draws", figures.OfPower(Math.Max(0, now.WaterDrawWatts ?? 0) + Math.Max(0, now.AirDrawWatts ?? 0))),
        };
    }

    private static double? Believed(NowBody now, string channel) => now.Readings.FirstOrDefault(one => one.Channel == channel)?.Value;

    private string Curb(NowBody now) => now.Mode == WireNames.Of(Mode.Servicing) ? words.Say(Names, "lockedOff") : words.Say(Names, "CURBS." + now.Curb);

    private string Trend(NowBody now, SightFigures figures)
    {
        string trend = now.Estimate.TrendKPerDay is { } change
            ? words.Say(Judge, "aDay", (change >= 0 ? "+" : string.Empty) + figures.OfKelvin(change))
            : "–";
        return words.Say(Judge, now.Outputs.PumpDuty > 0 ? "trendDrawing" : "trend", trend);
    }

    // With its seconds: the reader may look at it long after.
    private string Moment(NowBody now)
    {
        DateTimeOffset at = DateTimeOffset.FromUnixTimeMilliseconds(now.UtcMs).ToOffset(TimeSpan.FromMinutes(now.OffsetMinutes));
        return words.Say(
            Calendar, "dayAndClock", words.Say(Calendar, $"DAYS.{(int)at.DayOfWeek}"), at.Day.ToString(CultureInfo.InvariantCulture),
            words.Say(Calendar, $"MONTHS.{at.Month - 1}"), at.ToString("HH:mm:ss", CultureInfo.InvariantCulture));
    }

    // As units.js keeps a figure and its unit on one line.
    [GeneratedRegex(@"(?<figure>\d) (?=\d{3}\b|W\b|K\b|L/min|°|BTU|gal|kWh|%|h\b)")]
    private static partial Regex Together();
}
