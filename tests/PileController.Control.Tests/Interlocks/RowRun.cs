using PileController.Control.Decisions;
using PileController.Control.Interlocks;

namespace PileController.Control.Tests.Interlocks;

/// <summary>Feeds one row of the interlock table its signal over time, all other signals sound.</summary>
internal sealed class RowRun(ControlSettings settings, string id)
{
    private readonly int _index = InterlockTable.IndexOf(id);
    private InterlockMemory[] _memory = Memory.Fresh.Interlocks;
    private Verdict[] _verdicts = [];

    public Interlock Row => InterlockTable.All[_index];

    /// <summary>What the rows did together when last judged.</summary>
    public InterlockRule.Effect Effect { get; private set; }

    /// <summary>A moment of a pump that has run for long, just seen to be well.</summary>
    public static Moments At(long now) => new(now, now, now - 3_600_000, ValveIsShut: false);

    /// <summary>Signals that no row minds.</summary>
    public static double[] AllSound(ControlSettings settings)
    {
        double[] signals = new double[Signals.Count];
        signals[(int)Signal.Supply] = 40;
        signals[(int)Signal.House] = 15;
        signals[(int)Signal.ColdestLine] = settings.Limits.LineFrostC + 10;
        signals[(int)Signal.HottestHeap] = 60;
        signals[(int)Signal.Battery] = 13;
        signals[(int)Signal.CarbonDioxide] = 600;
        signals[(int)Signal.ActiveZone] = settings.HeapFloorC + 10;
        return signals;
    }

    public Verdict Say(double signal, long now) => Say(signal, At(now));

    public Verdict Say(double signal, Moments at)
    {
        double[] signals = AllSound(settings);
        signals[(int)Row.Source] = signal;
        (_verdicts, _memory, Effect) = InterlockRule.Judge(settings, signals, _memory, _verdicts, at);
        return _verdicts[_index];
    }
}
