using PileController.Control.Decisions;
using PileController.Control.Interlocks;

namespace PileController.Control.Tests.Interlocks;

/// <summary>Lines of which nothing can be seen: water is moved for a share of the time, while the heap can be seen to bear it.</summary>
public sealed class UnseenFrostTests
{
    private const long Tick = 10_000;
    private const long Minute = 60_000;

    private static readonly ControlSettings Settings = new();
    private static readonly int LineFrost = InterlockTable.IndexOf("lineFrost");

    private readonly double[] _signals = RowRun.AllSound(Settings);
    private InterlockMemory[] _memory = Memory.Fresh.Interlocks;
    private Verdict[] _verdicts = [];
    private long _now;

    public UnseenFrostTests() => _signals[(int)Signal.ColdestLine] = double.NaN;

    public static TheoryData<Signal, double> Holders => new()
    {
        { Signal.HeapBlind, 1 }, { Signal.Battery, 11 }, { Signal.House, 40 }, { Signal.Supply, 80 },
    };

    [Fact]
    public void Judge_WithTheHeapWarm_MovesWaterTenMinutesOfEachForty()
    {
        List<bool> day = [.. Run(24 * 60)];

        // The first begins half a minute later, as for a frost that is seen.
        Assert.Equal((36 * 60) - 3, day.Count(guards => guards));
        Assert.Equal(36, day.Zip(day.Skip(1)).Count(pair => pair is { First: true, Second: false }));
        Assert.All(day.Skip(60).Take(180), Assert.False);
        Assert.All(day.Skip(240).Take(60), Assert.True);
    }

    [Fact]
    public void Judge_WhileItRests_SaysThatItSeesNothing()
    {
        Run(20);

        Assert.Equal(Verdict.Blind, _verdicts[LineFrost]);
    }

    [Fact]
    public void Judge_OnceTheHeapIsBelowItsFloor_MovesNoMoreAndGoesOnWithTheSameRestsAfter()
    {
        Assert.True(Run(5)[^1]);
        _signals[(int)Signal.ActiveZone] = Settings.HeapFloorC - 0.1;
        Assert.DoesNotContain(true, Run(24 * 60));

        // Five minutes after the beginning of a run of ten: five are left.
        _signals[(int)Signal.ActiveZone] = Settings.HeapFloorC;
        Assert.Equal(5 * 6, Run(30).Count(guards => guards));
    }

    [Theory]
    [MemberData(nameof(Holders))]
    public void Judge_WhileAnInterlockHoldsTheWater_MovesNone(Signal signal, double wrong)
    {
        _signals[(int)signal] = wrong;
        Run(15);

        Assert.DoesNotContain(true, Run(120));
    }

    [Fact]
    public void Judge_AFrostThatIsSeen_IsGuardedWithoutRestsWhateverTheHeapAndTheBattery()
    {
        _signals[(int)Signal.ColdestLine] = Settings.Limits.LineFrostC - 0.1;
        _signals[(int)Signal.ActiveZone] = Settings.HeapFloorC - 10;
        _signals[(int)Signal.Battery] = 11;
        Run(1);

        Assert.DoesNotContain(false, Run(120));
    }

    [Fact]
    public void Judge_LinesSeenToBeWell_ForgetsAll()
    {
        Run(5);
        _signals[(int)Signal.ColdestLine] = Settings.Limits.LineFrostC + 5;
        Run(1);

        Assert.Equal(InterlockMemory.Fresh, _memory[LineFrost]);
        Assert.Equal(Verdict.Clear, _verdicts[LineFrost]);
    }

    private List<bool> Run(int minutes)
    {
        List<bool> told = [];
        for (long end = _now + (minutes * Minute); _now < end; _now += Tick)
        {
            (_verdicts, _memory, InterlockRule.Effect effect) = InterlockRule.Judge(Settings, _signals, _memory, _verdicts, RowRun.At(_now));
            told.Add(effect.GuardFrost);
        }

        return told;
    }
}
