using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Rigs;
using PileController.Service;
using PileController.Tests.Support;
using PileController.Watch;

namespace PileController.Tests.Watch;

public sealed class WatchFeedTests : IAsyncDisposable
{
    private readonly FakeTimeProvider _time = new();
    private readonly FakeRecord _record = new();
    private readonly TickCounts _counts = new() { RigAnswers = true, RigObeys = true };
    private readonly PanelFeed _feed;
    private readonly List<string> _heard = [];

    public WatchFeedTests() => _feed = new PanelFeed(_time);

    public ValueTask DisposeAsync() => _record.DisposeAsync();

    [Fact]
    public void Look_BeforeTheFirstTick_GivesNoSign()
    {
        Make().Look();

        Assert.DoesNotContain("WATCHDOG=1", _heard);
    }

    [Fact]
    public void Look_WhileTicksCome_GivesOneSignALook()
    {
        WatchFeed watch = Make();
        Tick();
        watch.Look();
        watch.Look();

        Assert.Equal(["WATCHDOG=1", "STATUS=Well.", "WATCHDOG=1"], _heard);
    }

    [Fact]
    public void Look_OnceTicksStay_StopsTheSignAndSaysWhy()
    {
        WatchFeed watch = Make();
        Tick();
        _time.Advance(TimeSpan.FromSeconds(31));
        watch.Look();

        Assert.Equal(["STATUS=No tick has come on time."], _heard);
    }

    [Fact]
    public void Look_ARigThatTakesNothing_StopsTheSign()
    {
        WatchFeed watch = Make();
        Tick();
        _counts.RigObeys = false;
        watch.Look();

        Assert.DoesNotContain("WATCHDOG=1", _heard);
    }

    [Fact]
    public void Look_AllProbesSilentThoughTheyHadAnswered_StopsTheSignInTime()
    {
        WatchFeed watch = Make();
        Tick();
        watch.Look();
        _heard.Clear();

        for (int i = 0; i < 61; i++)
        {
            _time.Advance(TimeSpan.FromSeconds(10));
            Tick(answers: false);
            watch.Look();
        }

        Assert.Equal(59, _heard.Count(text => text == "WATCHDOG=1"));
        Assert.Equal("STATUS=No probe has answered for 10 min.", _heard[^1]);
    }

    [Fact]
    public void Look_EachSickness_StopsThePulses()
    {
        PulseLine line = new();
        WatchFeed watch = new(
            [new PulseSign(line)], _time, _feed, _counts, new Punctuality(TimeSpan.FromSeconds(10)), _record, NullLogger<WatchFeed>.Instance);
        Tick();
        watch.Look();
        Assert.True(line.Well);

        (Action Break, Action Mend)[] sicknesses =
        [
            (() => _counts.RigAnswers = false, () => _counts.RigAnswers = true),
            (() => _counts.RigObeys = false, () => _counts.RigObeys = true),
            (() => _time.Advance(TimeSpan.FromSeconds(31)), () => Tick()),
        ];
        foreach ((Action breaks, Action mends) in sicknesses)
        {
            breaks();
            watch.Look();
            Assert.False(line.Well);
            mends();
            watch.Look();
            Assert.True(line.Well);
        }
    }

    private WatchFeed Make() => new(
        [new Supervisor(_heard.Add)], _time, _feed, _counts, new Punctuality(TimeSpan.FromSeconds(10)), _record, NullLogger<WatchFeed>.Instance);

    private void Tick(bool answers = true)
    {
        Instant at = new(0, 0, 0);
        RigReadings readings = answers
            ? MadeUp.Readings(at)
            : RigReadings.None.With(Channel.House, new Reading(0, ReadingQuality.NoAnswer, 0));
        (Decision decision, Memory after) = Controller.Step(new ControlSettings(), Memory.Fresh, readings, [], at);
        _feed.Publish(new TickNews(decision, readings, _record.Health, after));
    }

    private sealed class PulseLine : IHeldLine
    {
        public bool? Well { get; private set; }

        public void Say(bool allIsWell) => Well = allIsWell;
    }
}
