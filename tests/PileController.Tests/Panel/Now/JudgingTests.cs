using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Panel.Now;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Now;

public class JudgingTests
{
    private static readonly ControlSettings Control = new() { HouseMinimumC = 5, HeapFloorC = 45 };

    [Theory]
    [InlineData(4.9, "Below", "Bad")]
    [InlineData(5.0, "Close", "Warn")]
    [InlineData(5.9, "Close", "Warn")]
    [InlineData(6.1, "Safe", "Good")]
    [InlineData(32.0, "Safe", "Good")]
    [InlineData(50.1, "Hot", "Bad")]
    [InlineData(null, "Unknown", "Bad")]
    public async Task House_ByItsAir_IsJudged(double? celsius, string state, string tone)
    {
        Decision decision = await DecisionAsync(Channel.House, celsius);

        HouseState judged = Judging.House(decision, InterlockTable.All, Control);

        Assert.Equal(state, judged.ToString());
        Assert.Equal(tone, Judging.ToneOf(judged).ToString());
    }

    [Theory]
    [InlineData("houseHot", 31.0, 600.0, "Hot", "Bad")]
    [InlineData("carbonDioxide", 12.0, 4800.0, "FoulAir", "Bad")]
    [InlineData("carbonDioxide", 31.0, null, "FoulAir", "Bad")]
    [InlineData("none", 12.0, 5100.0, "FoulAir", "Bad")]
    [InlineData("none", 12.0, null, "AirUnknown", "Warn")]
    [InlineData("none", 4.0, null, "Below", "Bad")]
    [InlineData("batteryLow", 12.0, 600.0, "Safe", "Good")]
    public async Task House_ByItsInterlocks_IsJudged(string acting, double celsius, double? ppm, string state, string tone)
    {
        Decision decision = await DecisionAsync(Channel.House, celsius);
        Reading air = ppm is { } known ? Reading.FromValue(Channel.CarbonDioxide, known) : new Reading(0, ReadingQuality.NoAnswer, 0);
        decision = decision with { Readings = decision.Readings.With(Channel.CarbonDioxide, air), Verdicts = VerdictsOf(acting, Verdict.Acting) };

        HouseState judged = Judging.House(decision, InterlockTable.All, Control);

        Assert.Equal(state, judged.ToString());
        Assert.Equal(tone, Judging.ToneOf(judged).ToString());
    }

    [Theory]
    [InlineData(true, true, 44.9, 55.0, "Below", "Bad")]
    [InlineData(true, true, 45.0, 55.0, "Near", "Warn")]
    [InlineData(true, true, 47.0, 55.0, "Well", "Good")]
    [InlineData(true, false, 47.0, 55.0, "NotLit", "Plain")]
    [InlineData(false, true, 47.0, 55.0, "Unknown", "Warn")]
    [InlineData(false, true, 47.0, 80.0, "Hot", "Bad")]
    public async Task Heap_ByZoneAndProbes_IsJudged(bool trusted, bool lit, double zoneC, double coreC, string state, string tone)
    {
        Decision decision = await DecisionAsync(Channel.HeapCore, coreC);
        decision = decision with { Estimate = decision.Estimate with { Trusted = trusted, Lit = lit, ActiveZoneCelsius = zoneC } };

        HeapState judged = Judging.Heap(decision, Control);

        Assert.Equal(state, judged.ToString());
        Assert.Equal(tone, Judging.ToneOf(judged).ToString());
    }

    [Theory]
    [InlineData(Mode.Drawing, "none", Verdict.Clear, "Good")]
    [InlineData(Mode.Drawing, "noFlow", Verdict.Latched, "Bad")]
    [InlineData(Mode.ByHand, "noFlow", Verdict.Latched, "Warn")]
    [InlineData(Mode.Tripped, "none", Verdict.Clear, "Bad")]
    [InlineData(Mode.Standby, "houseHot", Verdict.Acting, "Warn")]
    [InlineData(Mode.Drawing, "batteryLow", Verdict.Acting, "Warn")]
    [InlineData(Mode.Drawing, "supplyHot", Verdict.Acting, "Bad")]
    [InlineData(Mode.Drawing, "heapFire", Verdict.Acting, "Bad")]
    [InlineData(Mode.Drawing, "carbonDioxide", Verdict.Acting, "Bad")]
    [InlineData(Mode.ByHand, "carbonDioxide", Verdict.Acting, "Bad")]
    [InlineData(Mode.Drawing, "tickLate", Verdict.Acting, "Good")]
    [InlineData(Mode.Drawing, "houseHot", Verdict.Pending, "Good")]
    public async Task Work_ByModeAndInterlocks_IsJudged(Mode mode, string interlock, Verdict verdict, string tone)
    {
        Decision decision = await DecisionAsync(Channel.House, 12);
        decision = decision with { Mode = mode, Verdicts = VerdictsOf(interlock, verdict) };

        Assert.Equal(tone, Judging.Work(decision, InterlockTable.All).ToString());
    }

    private static Verdict[] VerdictsOf(string interlock, Verdict verdict) =>
        [.. InterlockTable.All.Select(row => row.Id == interlock ? verdict : Verdict.Clear)];

    private static async Task<Decision> DecisionAsync(Channel channel, double? value)
    {
        await using PanelHost host = await PanelHost.StartAsync(speed: 1);
        Decision decision = host.Feed.Latest!.Decision;
        Reading reading = value is { } known ? Reading.FromValue(channel, known) : default;
        return decision with { Readings = decision.Readings.With(channel, reading) };
    }
}
