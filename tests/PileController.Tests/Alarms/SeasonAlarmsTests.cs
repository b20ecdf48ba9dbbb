using PileController.Alarms;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Physics.Sky.Weather;
using PileController.Seasons;
using PileController.Settings;
using PileController.Simulation;
using Xunit.Abstractions;

namespace PileController.Tests.Alarms;

/// <summary>
/// Winters without a fault: the board is to be quiet. Two winters by ticks of a minute; PILE_ALARM_SEASONS=1 runs five by ticks
/// of ten seconds.
/// </summary>
public sealed class SeasonAlarmsTests(ITestOutputHelper output)
{
    private static readonly bool AllOfThem = Environment.GetEnvironmentVariable("PILE_ALARM_SEASONS") == "1";

    private const int Days = 150;
    private const long WeekMilliseconds = 7 * 86_400_000L;

    public static TheoryData<string, int> Winters()
    {
        TheoryData<string, int> data = new() { { "demo", 2025 }, { "new-york-daily-2012-2013.csv", 2012 } };
        foreach (int year in AllOfThem ? (int[])[2012, 2013, 2014] : [])
        {
            data.Add("seattle-daily-2012-2015.csv", year);
        }

        return data;
    }

    private static readonly string[] OfTheWeather = ["tonightPoor", "houseCold", "houseFrost"];

    [Theory]
    [MemberData(nameof(Winters))]
    public void Season_WithoutAFault_RaisesAtMostOneAlarmAWeek(string file, int year)
    {
        (AlarmRun run, int poor, int told) = Live(file, year);
        foreach (AlarmEvent one in run.Events)
        {
            output.WriteLine($"{DateTimeOffset.FromUnixTimeMilliseconds(one.UtcMilliseconds):yyyy-MM-dd HH:mm} {one.Kind} {one.Key} {one.Detail}");
        }

        AlarmEvent[] raised = [.. run.Raised];

        // A spell that is told the evening before and then freezes the house is one matter told twice.
        int worst = InSevenDays([.. raised.Where(one => one.FirstUp)]);
        output.WriteLine(
            $"| {file} {year} | {raised.Count(one => one.Key == "tonightPoor")} | {raised.Count(one => one.Key == "houseFrost")} | {raised.Count(one => !OfTheWeather.Contains(one.Key))} | {raised.Length * 7.0 / Days:0.00} | {worst} | {poor} | {told} |");

        // Nothing but what the weather does, and in no seven days more than one.
        Assert.All(raised, one => Assert.Contains(one.Key, OfTheWeather));
        Assert.InRange(worst, 0, 1);
        Assert.InRange(InSevenDays(raised), 0, 2);
        Assert.InRange(raised.Length, 0, Days / 7);
        Assert.Equal(poor, told);
    }

    // The most that rose within seven days.
    private static int InSevenDays(AlarmEvent[] raised) => raised.Length == 0
        ? 0
        : raised.Max(first => raised.Count(
            one => one.UtcMilliseconds >= first.UtcMilliseconds && one.UtcMilliseconds < first.UtcMilliseconds + WeekMilliseconds));

    private static (AlarmRun Run, int PoorEvenings, int Told) Live(string file, int year)
    {
        PileSettings settings = PileSettings.AlderBank;
        ControlSettings control = settings.Control with
        {
            TickSeconds = AllOfThem ? settings.Control.TickSeconds : 60,
        };
        WeatherSeries weather = file == "demo" ? Demo.Weather(HoldingBuild.Place(settings)) : Recorded(file, settings);
        SeasonPlan plan = SeasonPlanning.Of(settings, control, weather, new DateOnly(year, 11, 1), Days);
        Holding holding = new(plan.Build, control, plan.Rig, weather, plan.OffsetMinutes, plan.StartUtcMilliseconds);
        AlarmRun run = new(holding, settings, control);
        (int poor, int told) = (0, 0);
        double hourBefore = 0;
        for (long ticks = (long)(Days * 86_400 / control.TickSeconds); ticks > 0; ticks--)
        {
            Decision decision = run.Tick();
            double hour = decision.At.LocalHour;
            if (hourBefore < 16 && hour >= 16 && decision.Tonight is { Poor: true })
            {
                poor++;
                told += run.Of("tonightPoor").Phase == AlarmPhase.Standing ? 1 : 0;
            }

            hourBefore = hour;
        }

        return (run, poor, told);
    }

    private static WeatherSeries Recorded(string file, PileSettings settings)
    {
        using StreamReader reader = new(Path.Combine(AppContext.BaseDirectory, "Weather", file));
        return WeatherFile.Read(reader, file, HoldingBuild.Place(settings));
    }
}
