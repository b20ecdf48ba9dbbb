using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Interlocks;
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

    /// <summary>Warmer than its interlock allows, or held for having been so.</summary>
    Hot,

    /// <summary>Its air may harm people.</summary>
    FoulAir,

    /// <summary>Its air is measured, and the probe cannot be believed.</summary>
    AirUnknown,
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

    /// <summary>The house: what may harm people first, then what may harm plants.</summary>
    /// <param name="decision">The tick.</param>
    /// <param name="table">The interlocks, in the order of the verdicts.</param>
    /// <param name="control">The limits.</param>
    public static HouseState House(Decision decision, IReadOnlyList<Interlock> table, ControlSettings control) =>
        Stands(decision, table, row => row.Source == Signal.CarbonDioxide) || IsAbove(decision, Channel.CarbonDioxide, control.Limits.CarbonDioxidePpm) ? HouseState.FoulAir
        : !decision.Readings.TryGet(Channel.House, out double celsius) ? HouseState.Unknown
        : Stands(decision, table, row => row.Source == Signal.House) || celsius > control.Limits.HouseMostC ? HouseState.Hot
        : celsius < control.HouseMinimumC ? HouseState.Below
        : IsSilent(decision.Readings[Channel.CarbonDioxide]) ? HouseState.AirUnknown
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
        HouseState.Close or HouseState.AirUnknown => Tone.Warn,
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

    /// <summary>How good or bad it is what is done. Never good while an interlock holds something back.</summary>
    /// <param name="decision">The tick.</param>
    /// <param name="table">The interlocks, in the order of the verdicts.</param>
    public static Tone Work(Decision decision, IReadOnlyList<Interlock> table) =>
        Stands(decision, table, EndangersPeople) ? Tone.Bad
        : decision.Mode is Mode.Servicing or Mode.ByHand or Mode.Recovering or Mode.FrostGuard ? Tone.Warn
        : decision.Mode == Mode.Tripped || decision.Verdicts.Contains(Verdict.Latched) ? Tone.Bad
        : Stands(decision, table, HoldsBack) ? Tone.Warn
        : Tone.Good;

    private static bool Stands(Decision decision, IReadOnlyList<Interlock> table, Func<Interlock, bool> concerned) =>
        table.Zip(decision.Verdicts).Any(row => row.Second is Verdict.Acting or Verdict.Latched && concerned(row.First));

    private static bool HoldsBack(Interlock row) => row.Action is InterlockAction.HoldWater or InterlockAction.HoldAir or InterlockAction.HoldAll;

    // Fire, scalding and bad air. Water near mains parts trips, which is bad enough.
    private static bool EndangersPeople(Interlock row) => row.Source is Signal.HottestHeap or Signal.Supply or Signal.CarbonDioxide;

    private static bool IsAbove(Decision decision, Channel channel, double limit) =>
        decision.Readings.TryGet(channel, out double value) && value > limit;

    private static bool IsSilent(Reading reading) => reading.Quality != ReadingQuality.NotFitted && !reading.IsGood;
}
