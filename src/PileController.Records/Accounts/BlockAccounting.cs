using System.Text.Json;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Records.Packing;
using PileController.Records.Summaries;

namespace PileController.Records.Accounts;

/// <summary>Counts the ticks of one block.</summary>
internal static class BlockAccounting
{
    private static readonly int ActiveZone = SummarySeries.Find("activeZone");
    private static readonly int Means = SummarySeries.Find("means");
    private static readonly int Generation = SummarySeries.Find("generation");
    private static readonly int PumpDuty = SummarySeries.Find("pumpDuty");
    private static readonly int House = SummarySeries.Find(ChannelTable.Of(Channel.House).Name);
    private static readonly int Outside = SummarySeries.Find(ChannelTable.Of(Channel.Outside).Name);
    private static readonly Channel[] Meter = [Channel.Flow, Channel.Supply, Channel.Return];

    /// <summary>Counts the ticks after a number.</summary>
    /// <param name="batch">The block; it has at least one tick after that number.</param>
    /// <param name="afterSequence">Ticks up to this one are left out.</param>
    /// <param name="rulesOf">What its ticks are held against, by the hash of their settings.</param>
    /// <exception cref="InvalidDataException">The block is damaged.</exception>
    /// <exception cref="JsonException">Its text was written by a build whose memory looked otherwise.</exception>
    public static BlockAccount Of(PackedBatch batch, long afterSequence, Func<string, AccountRules> rulesOf)
    {
        BatchText text = batch.Text();
        int first = (int)Math.Max(0, afterSequence + 1 - batch.FirstSequence);
        AccountRules rules = rulesOf(text.Origin.SettingsHash);
        long[] utc = batch.Column(TickColumns.Utc);
        Totals after = TotalsOf(text.MemoryAfter);
        double[] duty = Values(PumpDuty, batch);
        return new BlockAccount(
            text.Origin.SettingsHash, batch.FirstSequence + first, batch.Head.LastSequence, utc[first],
            utc[first + ((utc.Length - first) / 2)], utc[^1], first == 0 && !text.IsBeforeLost ? TotalsOf(text.MemoryBefore) : null, after,
            Count(batch, first, rules, utc, duty, LitOf(text.MemoryAfter)), duty[first] > 0, duty[^1] > 0);
    }

    private static TickFigures Count(PackedBatch batch, int first, AccountRules rules, long[] utc, double[] duty, bool lit)
    {
        double[] zone = Values(ActiveZone, batch);
        double[] means = Values(Means, batch);
        double[] net = Values(Generation, batch);
        double[] house = Values(House, batch);
        double[] outside = Values(Outside, batch);
        long[] mode = batch.Column(TickColumns.Mode);
        long[] kinds = batch.Column(TickColumns.Kinds);
        long[][] quality = [.. Meter.Select(channel => batch.Column(TickColumns.Of(channel, TickColumns.Quality)))];
        TickFigures sum = default;
        for (int row = first; row < utc.Length; row++)
        {
            bool running = duty[row] > 0;
            bool night = rules.HourOf(utc[row]) < Tonight.MorningHour;
            bool houseSeen = night && !double.IsNaN(house[row]);
            double seconds = rules.TickSeconds;
            double If(bool holds) => holds ? seconds : 0;
            bool netKnown = !double.IsNaN(net[row]);
            sum = sum.Plus(new TickFigures(
                1, seconds, If(running), If(running && quality.Any(column => column[row] != (long)ReadingQuality.Good)),
                If(lit && zone[row] < rules.FloorCelsius), If(mode[row] == (long)Mode.FrostGuard), If(means[row] > 0),
                running && (row == first || duty[row - 1] <= 0) ? 1 : 0, (kinds[row] & (long)DecisionKinds.Trip) != 0 ? 1 : 0,
                netKnown ? net[row] * seconds : 0, If(netKnown), If(houseSeen),
                If(houseSeen && house[row] < rules.HouseMinimumCelsius), houseSeen ? house[row] : null,
                night && !double.IsNaN(outside[row]) ? outside[row] : null));
        }

        return sum;
    }

    // NaN where there is none that may be believed.
    private static double[] Values(int series, PackedBatch batch) =>
        [.. SummarySeries.Cells(series, batch).Select(cell => cell == TickColumns.NoFigure ? double.NaN : SummarySeries.ToUnit(series, cell))];

    // Only two small parts of a memory are wanted; most of it is what the estimator is unsure of.
    private static Totals TotalsOf(JsonElement memory) =>
        Part(memory, nameof(Memory.Totals)).Deserialize<Totals>(RecordJson.Options);

    private static bool LitOf(JsonElement memory) =>
        Part(Part(memory, nameof(Memory.Estimator)), nameof(Memory.Estimator.Lit)).GetBoolean();

    private static JsonElement Part(JsonElement whole, string name) =>
        whole.ValueKind == JsonValueKind.Object && whole.TryGetProperty(JsonNamingPolicy.CamelCase.ConvertName(name), out JsonElement part)
            ? part
            : throw new JsonException($"The stored memory has no '{name}'.");
}
