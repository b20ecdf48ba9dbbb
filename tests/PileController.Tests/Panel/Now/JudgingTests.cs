using PileController.Control;
using PileController.Control.Decisions;
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
    [InlineData(null, "Unknown", "Bad")]
    public async Task House_ByItsAir_IsJudged(double? celsius, string state, string tone)
    {
        Decision decision = await DecisionAsync(Channel.House, celsius);

        HouseState judged = Judging.House(decision, Control);

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
    [InlineData(Mode.Drawing, false, "Good")]
    [InlineData(Mode.Drawing, true, "Bad")]
    [InlineData(Mode.ByHand, true, "Warn")]
    [InlineData(Mode.Tripped, false, "Bad")]
    public void Work_ByModeAndTrips_IsJudged(Mode mode, bool tripped, string tone) =>
        Assert.Equal(tone, Judging.ToneOf(mode, tripped).ToString());

    private static async Task<Decision> DecisionAsync(Channel channel, double? value)
    {
        await using PanelHost host = await PanelHost.StartAsync(speed: 1);
        Decision decision = host.Feed.Latest!.Decision;
        Reading reading = value is { } known ? Reading.FromValue(channel, known) : default;
        return decision with { Readings = decision.Readings.With(channel, reading) };
    }
}
