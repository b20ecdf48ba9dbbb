using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Control.Readings;

namespace PileController.Panel.Now;

/// <summary>How the house is.</summary>
internal enum HouseState
{
    /// <summary>Its probe cannot be believed.</summary>
    Unknown = 0,

    /// <summary>Below its minimum.</summary>
    Below,

    /// <summary>Less than a kelvin above it.</summary>
    Close,

    /// <summary>Well above it.</summary>
    Safe,
}

/// <summary>How the heap is.</summary>
internal enum HeapState
{
    /// <summary>A probe is at the fire-watch limit.</summary>
    Hot = 0,

    /// <summary>Too few probes to tell.</summary>
    Unknown,

    /// <summary>Not lit yet.</summary>
    NotLit,

    /// <summary>Below its floor.</summary>
    Below,

    /// <summary>Less than two kelvin above it.</summary>
    Near,

    /// <summary>Well above it.</summary>
    Well,
}

/// <summary>How good or bad it is.</summary>
internal enum Tone
{
    /// <summary>Neither.</summary>
    Plain = 0,

    /// <summary>As it should be.</summary>
    Good,

    /// <summary>To be watched.</summary>
    Warn,

    /// <summary>To be acted on.</summary>
    Bad,
}

/// <summary>Answers the first questions of a reader: is the house safe, is the heap well, is all in order with what is done.</summary>
internal static class Judging
{
    // Where a person should begin to look (common practice, no source).
    private const double CloseKelvin = 1;
    private const double NearKelvin = 2;

    private static readonly Channel[] HeapProbes = [Channel.HeapCore, Channel.HeapMiddle, Channel.HeapTurns, Channel.HeapEdge];

    /// <summary>The house.</summary>
    public static HouseState House(Decision decision, ControlSettings control) =>
        !decision.Readings.TryGet(Channel.House, out double celsius) ? HouseState.Unknown
        : celsius < control.HouseMinimumC ? HouseState.Below
        : celsius < control.HouseMinimumC + CloseKelvin ? HouseState.Close
        : HouseState.Safe;

    /// <summary>The heap.</summary>
    public static HeapState Heap(Decision decision, ControlSettings control) =>
        HeapProbes.Any(probe => decision.Readings.TryGet(probe, out double celsius) && celsius >= control.Limits.HeapFireC) ? HeapState.Hot
        : !decision.Estimate.Trusted ? HeapState.Unknown
        : !decision.Estimate.Lit ? HeapState.NotLit
        : decision.Estimate.ActiveZoneCelsius < control.HeapFloorC ? HeapState.Below
        : decision.Estimate.ActiveZoneCelsius < control.HeapFloorC + NearKelvin ? HeapState.Near
        : HeapState.Well;

    /// <summary>How good or bad a state of the house is.</summary>
    public static Tone ToneOf(HouseState state) => state switch
    {
        HouseState.Safe => Tone.Good,
        HouseState.Close => Tone.Warn,
        _ => Tone.Bad,
    };

    /// <summary>How good or bad a state of the heap is.</summary>
    public static Tone ToneOf(HeapState state) => state switch
    {
        HeapState.Well => Tone.Good,
        HeapState.Near or HeapState.Unknown => Tone.Warn,
        HeapState.NotLit => Tone.Plain,
        _ => Tone.Bad,
    };

    /// <summary>How good or bad it is what is done.</summary>
    /// <param name="mode">The mode.</param>
    /// <param name="tripped">Whether an interlock has latched.</param>
    public static Tone ToneOf(Mode mode, bool tripped) => mode switch
    {
        Mode.Tripped => Tone.Bad,
        Mode.Servicing or Mode.ByHand or Mode.Recovering or Mode.FrostGuard => Tone.Warn,
        _ => tripped ? Tone.Bad : Tone.Good,
    };
}
