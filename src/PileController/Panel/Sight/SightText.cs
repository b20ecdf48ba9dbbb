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
    private const string Head = "frame";
    private const string House = "house";
    private const string Outside = "outside";

    private readonly string _thousands = words.Say(Calendar, "THOUSANDS");

    /// <summary>The texts round the moment. Pure.</summary>
    /// <param name="now">The moment; null for a page that tells of none, and so not of whose rig it is.</param>
    /// <param name="reader">For whom.</param>
    public IReadOnlyDictionary<string, string> Frame(NowBody? now, SightReader reader) => new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["scheme"] = reader.Scheme switch
        {
            PanelScheme.Light => "light",
            PanelScheme.Dark => "dark",
            _ => "light dark",
        },
        ["holding"] = now?.Holding ?? words.Say(Head, "noHolding"),
        ["asOf"] = now is null ? string.Empty : words.Say(View, "asOf", At(now)),
        ["demo"] = now is { Demo: true } ? Demo(now) : string.Empty,
        ["unit"] = new SightFigures(reader.American, _thousands).TemperatureUnit,
        ["session"] = reader.Access switch
        {
            SightAccess.SignedIn => words.Say(Head, "signedIn"),
            SightAccess.Open => words.Say(Head, "access"),
            _ => words.Say(Head, "NAMES.signIn"),
        },
    };

    /// <summary>The texts of the moment. Pure.</summary>
    /// <param name="now">The moment.</param>
    /// <param name="american">Whether it is told in °F and BTU.</param>
    public IReadOnlyDictionary<string, string> Moment(NowBody now, bool american)
    {
        SightFigures figures = new(american, _thousands);
        return new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["title"] = words.Say(View, "title"),
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
            ["why"] = Together(american ? now.WhyAmerican : now.Why),
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

    private string Demo(NowBody now) => now.Speed switch
    {
        1 => words.Say(Head, "demoAsFast", now.Holding),
        60 => words.Say(Head, "demoAnHour", now.Holding),
        _ => words.Say(Head, "demoFaster", now.Holding, Span(TimeSpan.FromMinutes(now.Speed))),
    };

    // As time.js tells it.
    private string Span(TimeSpan span)
    {
        TimeSpan whole = TimeSpan.FromSeconds(Math.Round(span.TotalSeconds, MidpointRounding.AwayFromZero));
        return whole switch
        {
            { TotalMinutes: < 1 } => Counted("seconds", whole.Seconds),
            { TotalHours: < 1 } => Counted("minutes", whole.Minutes),
            { TotalDays: < 1 } => Counted("hours", whole.Hours) + Rest("minutes", whole.Minutes),
            _ => Counted("days", whole.Days) + Rest("hours", whole.Hours),
        };
    }

    private string Rest(string name, int count) => count == 0 ? string.Empty : " " + Counted(name, count);

    private string Counted(string name, int count) => words.Say(Calendar, name, count.ToString(CultureInfo.InvariantCulture));

    // As units.js writes the controller's sentences.
    private string Together(string sentence) => Unit().Replace(Thousand().Replace(sentence, _thousands), "\u00a0");

    // With its seconds: the reader may look at it long after.
    private string At(NowBody now)
    {
        DateTimeOffset at = DateTimeOffset.FromUnixTimeMilliseconds(now.UtcMs).ToOffset(TimeSpan.FromMinutes(now.OffsetMinutes));
        return words.Say(
            Calendar, "dayAndClock", words.Say(Calendar, $"DAYS.{(int)at.DayOfWeek}"), at.Day.ToString(CultureInfo.InvariantCulture),
            words.Say(Calendar, $"MONTHS.{at.Month - 1}"), at.ToString("HH:mm:ss", CultureInfo.InvariantCulture));
    }

    [GeneratedRegex(@"(?<=\d)[ ,](?=\d{3}(?!\d))")]
    private static partial Regex Thousand();

    [GeneratedRegex(@"(?<=\d) (?=W\b|K\b|L/min|°|BTU|gal|kWh|%|h\b)")]
    private static partial Regex Unit();
}
