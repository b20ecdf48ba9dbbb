using PileController.Control.Readings;
using PileController.Rigs.Faults;

namespace PileController.Rigs.Tests.Faults;

public class ReadingFaultsTests
{
    private readonly FaultBoard _board = new();
    private readonly ReadingFaults _faults;

    public ReadingFaultsTests() => _faults = new ReadingFaults(_board);

    [Fact]
    public void Distort_NoFault_HandsTheReadingsThrough()
    {
        RigReadings raw = Raw(20);

        Assert.Same(raw, _faults.Distort(raw, Ticks.At(0)));
    }

    [Theory]
    [InlineData(FaultKind.Open, ReadingQuality.NoAnswer)]
    [InlineData(FaultKind.Short, ReadingQuality.Shorted)]
    public void Distort_OpenOrShort_TellsOfItOnThatProbeOnly(FaultKind kind, ReadingQuality quality)
    {
        _board.Add(new Fault(kind, Channel.House));
        RigReadings raw = Raw(20);
        RigReadings shown = _faults.Distort(raw, Ticks.At(0));

        Assert.Equal(new Reading(0, quality, 0), shown[Channel.House]);
        Assert.Equal(raw[Channel.Floor], shown[Channel.Floor]);
        Assert.Equal(raw[Channel.Flow], shown[Channel.Flow]);
    }

    [Fact]
    public void Distort_Stuck_RepeatsItsLastValueAsGood()
    {
        _faults.Distort(Raw(20), Ticks.At(0));
        _board.Add(new Fault(FaultKind.Stuck, Channel.House));

        for (int tick = 1; tick < 5; tick++)
        {
            RigReadings shown = _faults.Distort(Raw(20 + tick), Ticks.At(tick));
            Assert.Equal(20, Value(shown));
            Assert.True(shown[Channel.House].IsGood);
        }

        _board.Clear();
        Assert.Equal(30, Value(_faults.Distort(Raw(30), Ticks.At(6))));
    }

    [Fact]
    public void Distort_StuckFromTheFirstTick_RepeatsTheFirstValue()
    {
        _board.Add(new Fault(FaultKind.Stuck, Channel.House));

        Assert.Equal(20, Value(_faults.Distort(Raw(20), Ticks.At(0))));
        Assert.Equal(20, Value(_faults.Distort(Raw(25), Ticks.At(1))));
    }

    [Fact]
    public void Distort_Drift_WandersByItsSizeAnHourAndStaysGood()
    {
        _board.Add(new Fault(FaultKind.Drift, Channel.House, -3));
        Assert.Equal(20, Value(_faults.Distort(Raw(20), Ticks.At(0))));

        // Another fault put in meanwhile does not start it afresh.
        _board.Add(new Fault(FaultKind.Open, Channel.Floor));
        RigReadings shown = _faults.Distort(Raw(20), Ticks.AtSeconds(7200));

        Assert.Equal(14, Value(shown));
        Assert.True(shown[Channel.House].IsGood);
    }

    [Fact]
    public void Distort_DriftTakenOutAndPutInAgain_StartsAfresh()
    {
        Fault drift = new(FaultKind.Drift, Channel.House, 4);
        _board.Add(drift);
        _faults.Distort(Raw(20), Ticks.At(0));
        _board.Clear();
        _faults.Distort(Raw(20), Ticks.AtSeconds(3600));
        _board.Add(drift);
        _faults.Distort(Raw(20), Ticks.AtSeconds(7200));

        Assert.Equal(22, Value(_faults.Distort(Raw(20), Ticks.AtSeconds(7200 + 1800))));
    }

    [Theory]
    [InlineData(100, 125)]
    [InlineData(-100, -55)]
    public void Distort_DriftForDays_EndsAtWhatTheProbeCanSay(double size, double expected)
    {
        _board.Add(new Fault(FaultKind.Drift, Channel.House, size));
        _faults.Distort(Raw(20), Ticks.At(0));

        Assert.Equal(expected, Value(_faults.Distort(Raw(20), Ticks.AtSeconds(86_400))));
    }

    [Fact]
    public void Distort_Spike_IsGoodAndWildAboutOneTickInSixAndRepeats()
    {
        _board.Add(new Fault(FaultKind.Spike, Channel.House, 40));
        int wild = 0;
        const int ticks = 6000;
        for (int tick = 0; tick < ticks; tick++)
        {
            RigReadings shown = _faults.Distort(Raw(20), Ticks.At(tick));
            Assert.True(shown[Channel.House].IsGood);
            Assert.Contains(Value(shown), new[] { 20.0, 60.0 });
            Assert.Equal(Value(shown), Value(_faults.Distort(Raw(20), Ticks.At(tick))));
            wild += Value(shown) == 60 ? 1 : 0;
        }

        // 1000 expected; four standard deviations of a binomial are 4·√(6000·5/36) = 115.
        Assert.InRange(wild, 885, 1115);
    }

    [Fact]
    public void Distort_SlowBus_ShowsTemperaturesOneToThreeTicksOldAndNothingElse()
    {
        _faults.Distort(Raw(20), Ticks.At(0));
        _board.Add(new Fault(FaultKind.SlowBus));

        double[] shownValues = new double[7];
        int[] ages = new int[7];
        for (int tick = 1; tick <= 7; tick++)
        {
            RigReadings raw = Raw(20 + tick);
            RigReadings shown = _faults.Distort(raw, Ticks.At(tick));
            Assert.Equal(ReadingQuality.Late, shown[Channel.House].Quality);
            Assert.Equal(raw[Channel.Flow], shown[Channel.Flow]);
            Assert.Equal(ReadingQuality.NotFitted, shown[Channel.Tank].Quality);
            shownValues[tick - 1] = Value(shown);
            ages[tick - 1] = shown[Channel.House].AgeMilliseconds;
        }

        Assert.Equal([20.0, 20, 20, 23, 23, 23, 26], shownValues);
        Assert.Equal([10_000, 20_000, 30_000, 10_000, 20_000, 30_000, 10_000], ages);
    }

    [Fact]
    public void Distort_SlowBusFromTheFirstTick_HasNothingToShowYet()
    {
        _board.Add(new Fault(FaultKind.SlowBus));

        Assert.Equal(ReadingQuality.NoAnswer, _faults.Distort(Raw(20), Ticks.At(0))[Channel.House].Quality);
        Assert.Equal(ReadingQuality.Late, _faults.Distort(Raw(21), Ticks.At(1))[Channel.House].Quality);
    }

    [Theory]
    [InlineData(FaultKind.Open, 0)]
    [InlineData(FaultKind.Stuck, 0)]
    [InlineData(FaultKind.Spike, 9)]
    public void Distort_ProbeThatIsNotFitted_StaysNotFitted(FaultKind kind, double size)
    {
        _board.Add(new Fault(kind, Channel.Tank, size));

        Assert.Equal(Reading.NotFitted, _faults.Distort(Raw(20), Ticks.At(0))[Channel.Tank]);
    }

    [Fact]
    public void Distort_DriftOfAProbeThatDoesNotAnswer_LeavesItSo()
    {
        _board.Add(new Fault(FaultKind.Drift, Channel.House, 5));
        Reading dead = new(0, ReadingQuality.NoAnswer, 0);

        Assert.Equal(dead, _faults.Distort(Raw(20).With(Channel.House, dead), Ticks.At(0))[Channel.House]);
    }

    private static RigReadings Raw(double celsius) => RigReadings.None
        .With(Channel.House, Reading.FromValue(Channel.House, celsius))
        .With(Channel.Floor, Reading.FromValue(Channel.Floor, celsius))
        .With(Channel.Flow, Reading.FromValue(Channel.Flow, celsius / 10));

    private static double Value(RigReadings readings) => readings[Channel.House].ValueOf(Channel.House);
}
