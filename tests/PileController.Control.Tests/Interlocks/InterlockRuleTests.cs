using PileController.Control.Decisions;
using PileController.Control.Interlocks;

namespace PileController.Control.Tests.Interlocks;

public sealed class InterlockRuleTests
{
    private static readonly ControlSettings Settings = new();

    // A signal well on the sound side and one just past the limit, for every row; and how long it must last, ms.
    private static readonly (string Id, double Sound, double Wrong, long Persistence)[] Rows =
    [
        ("leak", 0, 1, 20_000), ("level", 0, 1, 30_000), ("noFlow", 0, 1, 15_000), ("pumpSilent", 0, 1, 15_000),
        ("heapFire", 60, 80.1, 60_000), ("lineFrost", 10, 2.4, 30_000), ("supplyHot", 50, 75.1, 30_000),
        ("houseHot", 15, 32.1, 60_000), ("batteryLow", 12.8, 11.59, 300_000), ("batteryEmpty", 12.8, 11.19, 60_000),
        ("heapBlind", 0, 1, 600_000), ("houseBlind", 0, 1, 120_000), ("flowWhileOff", 0, 1, 120_000),
        ("storeFailing", 0, 1, 30_000), ("clockJump", 0, 5.1, 0), ("tickLate", 0, 10.1, 0),
        ("restarts", 4, 5, 0), ("carbonDioxide", 600, 5001, 300_000),
    ];

    public static TheoryData<string> Ids => [.. InterlockTable.All.Select(row => row.Id)];

    [Fact]
    public void Table_EveryRow_HasItsTestRowAndWords()
    {
        Assert.Equal(InterlockTable.All.Select(row => row.Id), Rows.Select(row => row.Id));
        Assert.All(InterlockTable.All, row => Assert.EndsWith(".", row.Sentence, StringComparison.Ordinal));
        Assert.All(InterlockTable.All, row => Assert.EndsWith(".", row.Remedy, StringComparison.Ordinal));
    }

    [Fact]
    public void Judge_AMemoryOfAnEarlierTable_KeepsItsTripsAndTakesTheNewRowsAsClear()
    {
        InterlockMemory[] shorter = [.. Enumerable.Repeat(new InterlockMemory(-1, false, false), InterlockTable.FirstCount - 1)];
        shorter[0] = new InterlockMemory(-1, true, true);

        (Verdict[] verdicts, InterlockMemory[] memory, InterlockRule.Effect effect) =
            InterlockRule.Judge(Settings, new double[Signals.Count], shorter, [], RowRun.At(1000));

        Assert.Equal(InterlockTable.FirstCount, memory.Length);
        Assert.Equal(InterlockTable.All.Count, verdicts.Length);
        Assert.Equal(Verdict.Latched, verdicts[0]);
        Assert.Equal(Verdict.Clear, verdicts[^1]);
        Assert.True(effect.Tripped);
    }

    [Fact]
    public void Judge_ALaterRow_IsRememberedOnceThereIsSomethingAndNotBefore()
    {
        double[] signals = RowRun.AllSound(Settings);
        InterlockMemory[] calm = InterlockRule.Judge(Settings, signals, Memory.Fresh.Interlocks, [], RowRun.At(0)).Memory;
        signals[(int)Signal.CarbonDioxide] = 9000;
        InterlockMemory[] passed = InterlockRule.Judge(Settings, signals, calm, [], RowRun.At(10_000)).Memory;

        Assert.Equal(InterlockTable.FirstCount, calm.Length);
        Assert.Equal([.. calm, new InterlockMemory(10_000, false, false)], passed);
    }

    [Fact]
    public void Judge_NothingToBeSeenAtAll_MovesNoWaterOnceTheDrawIsHeldAndGuardsAgainWhenTheHeapIsSeen()
    {
        double[] signals = RowRun.AllSound(Settings);
        signals[(int)Signal.ColdestLine] = double.NaN;
        signals[(int)Signal.HeapBlind] = 1;
        InterlockMemory[] memory = Memory.Fresh.Interlocks;
        Verdict[] verdicts = [];
        List<bool> guards = [];
        InterlockRule.Effect effect = default;
        for (long now = 0; now <= 700_000; now += 10_000)
        {
            (verdicts, memory, effect) = InterlockRule.Judge(Settings, signals, memory, verdicts, RowRun.At(now));
            guards.Add(effect.GuardFrost);
        }

        Assert.True(guards[30]);
        Assert.Equal((false, true, "heapBlind"), (effect.GuardFrost, effect.HoldWater, InterlockTable.All[effect.First].Id));
        Assert.Equal(Verdict.Blind, verdicts[InterlockTable.IndexOf("lineFrost")]);

        signals[(int)Signal.HeapBlind] = 0;
        // Within a share of the time, as long as the lines are not seen (UnseenFrostTests).
        for (long now = 710_000; now <= 2_410_000; now += 10_000)
        {
            (verdicts, memory, effect) = InterlockRule.Judge(Settings, signals, memory, verdicts, RowRun.At(now));
        }

        Assert.True(effect.GuardFrost);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Judge_LimitPassed_ActsAfterItsPersistenceAndNotBefore(string id)
    {
        (_, double sound, double wrong, long persistence) = Row(id);
        RowRun run = new(Settings, id);

        Assert.Equal(Verdict.Clear, run.Say(sound, 0));
        Verdict acts = run.Row.Action == InterlockAction.Trip ? Verdict.Latched : Verdict.Acting;
        if (persistence > 0)
        {
            Assert.Equal(Verdict.Pending, run.Say(wrong, 1000));
            Assert.Equal(Verdict.Pending, run.Say(wrong, 1000 + persistence - 1));
        }

        Assert.Equal(acts, run.Say(wrong, 1000 + persistence));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Judge_SoundForOneTick_BeginsThePersistenceAnew(string id)
    {
        (_, double sound, double wrong, long persistence) = Row(id);
        RowRun run = new(Settings, id);
        run.Say(wrong, 0);
        if (persistence > 0)
        {
            run.Say(sound, persistence - 2);
            Assert.Equal(Verdict.Pending, run.Say(wrong, persistence - 1));
            Assert.Equal(Verdict.Pending, run.Say(wrong, (2 * persistence) - 2));
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Judge_Acting_LetsGoBeyondItsBandOnlyAndATripNever(string id)
    {
        (_, _, double wrong, long persistence) = Row(id);
        RowRun run = new(Settings, id);
        run.Say(wrong, 0);
        run.Say(wrong, persistence);
        double limit = run.Row.Limit(Settings);
        double toward = run.Row.Comparison == Comparison.Above ? -1 : 1;
        bool trip = run.Row.Action == InterlockAction.Trip;
        Verdict acts = trip ? Verdict.Latched : Verdict.Acting;

        if (run.Row.ReleaseBand > 0)
        {
            Assert.Equal(acts, run.Say(limit + (toward * (run.Row.ReleaseBand - 0.01)), persistence + 1000));
        }

        Assert.Equal(trip ? Verdict.Latched : Verdict.Clear, run.Say(limit + (toward * (run.Row.ReleaseBand + 0.01)), persistence + 2000));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Judge_SourceSilent_ActsOnlyWhereTheRowSaysSo(string id)
    {
        long persistence = id == "noFlow" ? 60_000 : Row(id).Persistence;
        RowRun run = new(Settings, id);
        run.Say(double.NaN, 0);
        Assert.Equal(Row(id).Id is "noFlow" or "lineFrost" ? Verdict.Pending : Verdict.Blind, run.Say(double.NaN, persistence - 1));
        Verdict last = run.Say(double.NaN, persistence);

        bool acts = run.Row.StaleActs;
        Assert.Equal(id is "noFlow" or "lineFrost", acts);
        Assert.Equal(!acts ? Verdict.Blind : run.Row.Action == InterlockAction.Trip ? Verdict.Latched : Verdict.Acting, last);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Judge_SourceFallsSilentWhileActing_GoesOnActing(string id)
    {
        (_, _, double wrong, long persistence) = Row(id);
        RowRun run = new(Settings, id);
        run.Say(wrong, 0);
        Verdict acting = run.Say(wrong, persistence);

        Assert.Equal(acting, run.Say(double.NaN, persistence + 1000));

        // Of a frost that is not seen any more UnseenFrostTests tells.
        Assert.Equal(id == "lineFrost" ? Verdict.Blind : acting, run.Say(double.NaN, persistence + 3_600_000));
    }

    [Fact]
    public void Judge_SourceFlickersWhileTheLimitIsPassed_StillActsInTime()
    {
        RowRun run = new(Settings, "leak");
        run.Say(1, 0);
        Assert.Equal(Verdict.Blind, run.Say(double.NaN, 10_000));

        Assert.Equal(Verdict.Latched, run.Say(1, 20_000));
    }

    [Fact]
    public void Judge_SeveralAct_ATripIsToldFirstAndTheWaterHolderIsKnown()
    {
        double[] signals = RowRun.AllSound(Settings);
        signals[(int)Signal.House] = 40;
        signals[(int)Signal.Battery] = 11;
        InterlockMemory[] memory = [.. InterlockTable.All.Select(_ => new InterlockMemory(0, false, false))];
        InterlockRule.Effect held = InterlockRule.Judge(Settings, signals, memory, [], RowRun.At(3_600_000)).Effect;
        signals[(int)Signal.PumpSilent] = 1;
        InterlockRule.Effect tripped = InterlockRule.Judge(Settings, signals, memory, [], RowRun.At(3_600_000)).Effect;

        Assert.Equal("houseHot", InterlockTable.All[held.First].Id);
        Assert.Equal("houseHot", InterlockTable.All[held.FirstHoldingWater].Id);
        Assert.True(held is { HoldWater: true, HoldAir: true, HoldBackup: true, Tripped: false });
        Assert.Equal("pumpSilent", InterlockTable.All[tripped.First].Id);
        Assert.True(tripped.Tripped);
    }

    [Fact]
    public void Judge_SomethingChanges_LeavesWhatWasGivenAsItWas()
    {
        double[] signals = RowRun.AllSound(Settings);
        InterlockMemory[] fresh = Memory.Fresh.Interlocks;
        (Verdict[] clear, InterlockMemory[] calm, _) = InterlockRule.Judge(Settings, signals, fresh, [], RowRun.At(0));
        (Verdict[] again, InterlockMemory[] still, _) = InterlockRule.Judge(Settings, signals, calm, clear, RowRun.At(10_000));
        signals[(int)Signal.Leak] = 1;
        signals[(int)Signal.House] = 90;
        (Verdict[] wet, InterlockMemory[] passed, _) = InterlockRule.Judge(Settings, signals, still, again, RowRun.At(20_000));

        Assert.Same(clear, again);
        Assert.Same(calm, still);
        Assert.All(clear, verdict => Assert.Equal(Verdict.Clear, verdict));
        Assert.All(calm, row => Assert.Equal(InterlockMemory.Fresh, row));
        Assert.Equal(2, wet.Count(verdict => verdict == Verdict.Pending));
        Assert.Equal(2, passed.Count(row => row.SinceMilliseconds == 20_000));
    }

    [Fact]
    public void IndexOf_AnyCase_FindsTheRowAndUnknownIsMinusOne()
    {
        Assert.Equal(0, InterlockTable.IndexOf("LEAK"));
        Assert.Equal(-1, InterlockTable.IndexOf("no such row"));
    }

    private static (string Id, double Sound, double Wrong, long Persistence) Row(string id) => Rows.Single(row => row.Id == id);
}
