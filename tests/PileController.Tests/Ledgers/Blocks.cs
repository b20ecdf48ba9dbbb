using PileController.Control.Decisions;
using PileController.Records.Accounts;
using PileController.Settings;

namespace PileController.Tests.Ledgers;

/// <summary>Accounts of made-up blocks of an hour, each tick a minute, at any wall time.</summary>
internal sealed class Blocks
{
    public const int Ticks = 60;

    private Totals _totals;

    public long NextSequence { get; set; } = 1;

    public List<BlockAccount> All { get; } = [];

    public static AccountRules Rules(string zone) => new(60, 45, 5, new Site { TimeZone = zone }.OffsetMinutesAt);

    /// <summary>Totals that every tick adds to by the same amount.</summary>
    public static Totals Of(long ticks) => new(6000.0 * ticks, 200.0 * ticks, 500.0 * ticks, 90.0 * ticks, 30.0 * ticks, 2.0 * ticks);

    /// <summary>Adds a block that begins at a wall time.</summary>
    public Blocks Add(DateTimeOffset begins, int ticks = Ticks, bool pumpOn = true, Totals? before = null, TickFigures extra = default)
    {
        Totals start = before ?? _totals;
        Totals each = Of(ticks);
        Totals end = new(
            start.WaterJoules + each.WaterJoules, start.WaterErrorJoules + each.WaterErrorJoules, start.AirJoules + each.AirJoules,
            start.PumpJoules + each.PumpJoules, start.BlowerJoules + each.BlowerJoules, start.Litres + each.Litres);
        long utc = begins.ToUnixTimeMilliseconds();
        TickFigures figures = extra.Plus(default(TickFigures) with { Ticks = ticks, RecordedSeconds = 60.0 * ticks, PumpStarts = pumpOn ? 1 : 0 });
        All.Add(new BlockAccount(
            "a1", NextSequence, NextSequence + ticks - 1, utc, utc + (ticks / 2 * 60_000L), utc + ((ticks - 1) * 60_000L), start, end, figures,
            pumpOn, pumpOn));
        NextSequence += ticks;
        _totals = end;
        return this;
    }

    /// <summary>Adds so many hours in a row.</summary>
    public Blocks Hours(DateTimeOffset begins, int hours)
    {
        for (int i = 0; i < hours; i++)
        {
            Add(begins.AddHours(i));
        }

        return this;
    }
}
