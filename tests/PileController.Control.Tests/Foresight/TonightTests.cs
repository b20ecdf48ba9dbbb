using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Foresight;

public sealed class TonightTests
{
    private const long Midnight = 1_737_936_000_000; // 2025-01-27T00:00Z
    private static readonly ControlSettings Settings = new();
    private static readonly NightDraw Nothing = new(0, 0, 0, 0, 0);

    // Published points of the normal distribution: the same as in the rule for means.
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(0.8416, 0.8)]
    [InlineData(1.2816, 0.9)]
    [InlineData(1.6449, 0.95)]
    [InlineData(2.3263, 0.99)]
    [InlineData(-1.96, 0.025)]
    public void Below_OfTheBell_IsAsPublished(double sigmas, double share) => Assert.Equal(share, Bell.Below(sigmas), 1e-5);

    [Fact]
    public void Of_RandomEvenings_KeepsItsOrderAndItsBounds()
    {
        Random random = new(16_09);
        for (int i = 0; i < 400; i++)
        {
            double outside = -15 + (25 * random.NextDouble());
            NightDraw draw = new(2000 * random.NextDouble(), 3000 * random.NextDouble(), 0, 2500 * random.NextDouble(), 500 * random.NextDouble());
            Tonight said = Said(outside, 5 + (15 * random.NextDouble()), draw, 24 * random.NextDouble());

            Assert.InRange(said.ChanceOfHolding, 0, 1);
            Assert.True(said.MinimumP10C <= said.MinimumP50C && said.MinimumP50C <= said.MinimumP90C);
            Assert.InRange(said.AtUtcMilliseconds, said.MadeUtcMilliseconds, said.UntilUtcMilliseconds);
            Assert.InRange(said.UntilUtcMilliseconds - said.MadeUtcMilliseconds, 1, 24 * 3_600_000L);
            Assert.Equal(said.MinimumP10C < Settings.HouseMinimumC, said.BackupWatts is not null);
            Assert.Equal(said.BackupWatts is null, said.FromUtcMilliseconds is null);
            Assert.Equal(said.ChanceOfHolding < 0.8, said.Poor);
        }
    }

    [Fact]
    public void Of_AWarmerNight_IsNeverWorse()
    {
        for (double outside = -12; outside < 12; outside += 1)
        {
            Tonight colder = Said(outside, 12, Nothing);
            Tonight warmer = Said(outside + 1, 12, Nothing);
            Assert.True(warmer.MinimumP50C >= colder.MinimumP50C);
            Assert.True(warmer.ChanceOfHolding >= colder.ChanceOfHolding);
            Assert.True((warmer.BackupWatts ?? 0) <= (colder.BackupWatts ?? 0));
        }
    }

    [Fact]
    public void Of_AHeapThatGives_HoldsNightsThatAreLostWithout()
    {
        Tonight without = Said(-1, 10, Nothing);
        Tonight with = Said(-1, 10, new NightDraw(1500, 3000, 1500, 2500, 500));

        Assert.True(without.ChanceOfHolding < 0.4, $"{without}");
        Assert.True(with.ChanceOfHolding > 0.8, $"{with}");
    }

    [Fact]
    public void Of_TheHeaterItAsksFor_WouldHoldTheColdNight()
    {
        Tonight said = Said(-6, 10, Nothing);
        double watts = Assert.NotNull(said.BackupWatts);
        HouseMemory house = HouseMemory.Fresh with { AirC = 10, FloorC = 10, TankC = 10 };
        HouseModel model = HouseModel.Of(Settings, house);
        HouseState state = house.State;
        // The night at the tenth in a hundred: colder by as much as moves the least air there.
        double colder = 1.2816 * said.OutsideSigmaK;
        double least = double.PositiveInfinity;
        for (long at = said.MadeUtcMilliseconds; at < said.UntilUtcMilliseconds; at += 1_800_000)
        {
            bool on = at >= said.FromUtcMilliseconds;
            state = model.Step(state, 1800, -6 - colder, 0, 0, on ? watts : 0);
            least = Math.Min(least, at >= said.FromUtcMilliseconds + 3_600_000 ? state.AirC : least);
        }

        Assert.InRange(least, Settings.HouseMinimumC - 1.5, Settings.HouseMinimumC + 1.5);
    }

    [Fact]
    public void Of_AForecast_IsAskedAndNarrowsTheNight()
    {
        Instant at = At(16);
        Forecast forecast = new(Midnight, [.. Enumerable.Repeat(0.0, 48)], null, "a test");
        Tonight with = Tonight.Of(Settings, House(12), Weather(0), forecast, TonightLearned.Fresh, Nothing, at);
        Tonight without = Tonight.Of(Settings, House(12), Weather(0), null, TonightLearned.Fresh, Nothing, at);

        Assert.True(with.UsesForecast && !without.UsesForecast);
        Assert.True(with.MinimumP90C - with.MinimumP10C < without.MinimumP90C - without.MinimumP10C);
    }

    [Fact]
    public void After_NightsThatComeOutColder_LearnsToSaySoWithinItsBounds()
    {
        TonightLearned learned = TonightLearned.Fresh;
        for (int i = 0; i < 200; i++)
        {
            learned = (learned with { Due = Said(0, 12, Nothing) }).After(-20, Settings.HouseMinimumC);
        }

        Assert.Equal((-3, 3), (learned.BiasK, learned.Spread2));
        Assert.Null(learned.Due);
        Assert.Equal(200, learned.Nights);
    }

    [Fact]
    public void After_NightsThatComeOutAsSaid_NarrowsTheSpread()
    {
        TonightLearned learned = TonightLearned.Fresh;
        for (int i = 0; i < 200; i++)
        {
            Tonight said = Said(0, 12, Nothing);
            learned = (learned with { Due = said }).After(said.MinimumP50C, Settings.HouseMinimumC);
        }

        Assert.Equal(0.3, learned.Spread2, 1e-9);
    }

    [Fact]
    public void Tick_BeforeAPoorNight_WarnsOnceInTheEvening()
    {
        Bench bench = Evenings(out List<Decision> told);
        Decision first = told[0];

        Assert.Equal(2, told.Count);
        Assert.All(told, d => Assert.InRange(d.At.LocalHour, 16, 16.1));
        Assert.True(told[1].At.UtcMilliseconds - first.At.UtcMilliseconds > 23 * 3_600_000L);
        Assert.Contains("Tonight the house is likely to fall to ", first.Why, StringComparison.Ordinal);
        Assert.Contains(" °F", Sentence.Of(first, american: true), StringComparison.Ordinal);
        Assert.Contains(" BTU/h of other heat from ", Sentence.Of(first, american: true), StringComparison.Ordinal);
        Assert.NotNull(bench.Memory.Tonight.Learned.Due);
    }

    [Fact]
    public void Tick_AfterTheMorning_HasLearnedFromTheNight()
    {
        Bench bench = Evenings(out _);
        Assert.Equal(1, bench.Memory.Tonight.Learned.Nights);
    }

    [Fact]
    public void AfterRestart_InTheNight_KeepsWhatWasLearnedAndDoesNotWarnAgain()
    {
        Bench bench = Evenings(out _);
        TonightLearned learned = bench.Memory.Tonight.Learned;
        bench.Memory = bench.Memory.AfterRestart();
        Decision decision = bench.TickAfter(60);

        Assert.Equal(learned, bench.Memory.Tonight.Learned);
        Assert.False(decision.Kinds.HasFlag(DecisionKinds.Tonight));
        Assert.NotNull(decision.Tonight);
        Assert.True(bench.Memory.Tonight.Heated);
    }

    // Two cold days at the bench, up to a while after the second evening.
    private static Bench Evenings(out List<Decision> told)
    {
        Bench bench = new(new ControlSettings { HouseMinimumC = 5 });
        bench.Memory = bench.Memory with { Estimator = bench.Memory.Estimator with { Lit = false } };
        bench.Readings = bench.Readings.With(Channel.HeapCore, 20).With(Channel.HeapMiddle, 20).With(Channel.HeapTurns, 20).With(Channel.HeapEdge, 15);
        told = [];
        for (int i = 0; i < 40 * 60; i++)
        {
            Decision decision = bench.TickAfter(60);
            if (decision.Kinds.HasFlag(DecisionKinds.Tonight))
            {
                told.Add(decision);
            }
        }

        return bench;
    }

    private static Instant At(double hour) => new(Midnight + (long)(hour * 3_600_000), 100_000_000, 0);

    private static HouseMemory House(double airC) => HouseMemory.Fresh with { AirC = airC, FloorC = 10, TankC = airC };

    private static WeatherMemory Weather(double outsideC) => WeatherMemory.Fresh with
    {
        NowC = outsideC,
        Learned = WeatherLearned.Fresh with { LastC = [outsideC], SlowC = outsideC, ShapeK = new double[24] },
    };

    private static Tonight Said(double outsideC, double airC, in NightDraw draw, double hour = 16) =>
        Tonight.Of(Settings, House(airC), Weather(outsideC), null, TonightLearned.Fresh, draw, At(hour));
}
