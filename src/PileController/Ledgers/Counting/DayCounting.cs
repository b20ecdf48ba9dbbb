using PileController.Control.Decisions;
using PileController.Records.Accounts;

namespace PileController.Ledgers.Counting;

/// <summary>
/// Makes days of the accounts of blocks. A block belongs to the date of its middle tick, so a day's edge is the edge of a
/// block that lies nearest to midnight, and nothing is interpolated. Each tick is counted once, whatever the clock does:
/// ticks are taken in the order of their numbers, and a wall time only tells to which date a block goes.
/// </summary>
internal sealed class DayCounting(Edge? from, Func<string, AccountRules> rulesOf)
{
    private readonly List<DayEntry> _over = [];
    private Stretch? _now;
    private Edge? _edge = from;

    /// <summary>Days that are over.</summary>
    public IReadOnlyList<DayEntry> Over => _over;

    /// <summary>Where the last of them ends; what was given when there is none.</summary>
    public Edge? OverTo { get; private set; } = from;

    /// <summary>The day that still runs, so far; null when nothing was counted.</summary>
    public DayEntry? Now => _now?.Entry(_edge!.Totals);

    /// <summary>The settings of the last tick seen; null when there is none.</summary>
    public string? SettingsHash => _edge?.SettingsHash;

    /// <summary>Takes in the next block.</summary>
    public void Add(BlockAccount block)
    {
        DateOnly date = rulesOf(block.SettingsHash).DateOf(block.MiddleUtcMilliseconds);
        Totals before = block.Before ?? _edge?.Totals ?? block.After;
        bool anew = _edge is { } edge && WentBack(edge.Totals, before);
        if (_now is not null && (anew || _now.Date != date))
        {
            // Ticks that were dropped between two blocks are in the totals: they go to the day that ends.
            Totals end = anew ? _edge!.Totals : before;
            _over.Add(_now.Entry(end));
            OverTo = _edge! with { Totals = end };
            _now = null;
        }

        // What lies between the last edge and this block is in the totals too, unless they began anew.
        _now ??= new Stretch(date, block, anew || OverTo is null ? before : OverTo.Totals);
        _now.Add(block, pumpRanOn: _edge is { PumpOn: true } && block.PumpOnFirst);
        _edge = new Edge(block.LastSequence, block.After, block.PumpOnLast, block.SettingsHash);
    }

    // These four only grow; heat by water and air may be negative for a while.
    private static bool WentBack(in Totals earlier, in Totals later) =>
        later.WaterErrorJoules < earlier.WaterErrorJoules || later.PumpJoules < earlier.PumpJoules
        || later.BlowerJoules < earlier.BlowerJoules || later.Litres < earlier.Litres;

    private sealed class Stretch(DateOnly date, BlockAccount first, Totals start)
    {
        private TickFigures _figures;
        private long _lastSequence;
        private long _toUtcMilliseconds;

        public DateOnly Date => date;

        public void Add(BlockAccount block, bool pumpRanOn)
        {
            TickFigures figures = block.Figures;
            _figures = _figures.Plus(pumpRanOn ? figures with { PumpStarts = figures.PumpStarts - 1 } : figures);
            _lastSequence = block.LastSequence;
            _toUtcMilliseconds = block.LastUtcMilliseconds;
        }

        public DayEntry Entry(in Totals end) => new(
            date, first.FirstSequence, _lastSequence, first.FirstUtcMilliseconds, _toUtcMilliseconds, Less(end, start), _figures);

        private static Totals Less(in Totals end, in Totals start) => new(
            end.WaterJoules - start.WaterJoules, end.WaterErrorJoules - start.WaterErrorJoules, end.AirJoules - start.AirJoules,
            end.PumpJoules - start.PumpJoules, end.BlowerJoules - start.BlowerJoules, end.Litres - start.Litres);
    }
}
