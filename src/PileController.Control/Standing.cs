using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Control.Interlocks;
using PileController.Control.Modes;

namespace PileController.Control;

/// <summary>What of a <see cref="Memory"/> stands for many ticks; told there.</summary>
internal readonly record struct Standing
{
    public Mode Mode { get; init; }

    public long ModeSinceMonotonicMilliseconds { get; init; }

    public Forecast? Forecast { get; init; }

    public Course Course { get; init; }

    public long LookedAtMonotonicMilliseconds { get; init; }

    public GuardNeed Guard { get; init; }

    public TonightMemory Tonight { get; init; }

    public InterlockMemory[] Interlocks { get; init; }

    /// <summary>What the interlocks said last: the same array is told again as long as they say the same. Not written.</summary>
    public Verdict[] Verdicts { get; init; }

    public HandHold[] Hands { get; init; }

    public bool Servicing { get; init; }

    public long FlowSinceMonotonicMilliseconds { get; init; }

    public long ToldDoubtedProbes { get; init; }

    public long ToldProbesAtMonotonicMilliseconds { get; init; }

    public Curb ToldCurb { get; init; }

    public long ToldCurbAtMonotonicMilliseconds { get; init; }

    public Outputs Outputs { get; init; }

    /// <summary>Nothing runs, nothing was seen or told yet.</summary>
    public static Standing Fresh
    {
        get
        {
            InterlockMemory[] interlocks = new InterlockMemory[InterlockTable.FirstCount];
            Array.Fill(interlocks, InterlockMemory.Fresh);
            return new Standing
            {
                Course = Course.Usual,
                LookedAtMonotonicMilliseconds = -1,
                Guard = GuardNeed.Fresh,
                Tonight = TonightMemory.Fresh,
                Interlocks = interlocks,
                Verdicts = [],
                Hands = [],
                FlowSinceMonotonicMilliseconds = -1,
                ToldProbesAtMonotonicMilliseconds = -3_600_000,
            };
        }
    }
}
