using System.Collections.Concurrent;
using PileController.Control;
using PileController.Records;
using PileController.Records.Accounts;
using PileController.Records.Checking;

namespace PileController.Tests.Support;

/// <summary>A record in memory, with a made-up fortnight behind it, that can refuse or throw.</summary>
public sealed class FakeRecord : IPileRecord
{
    private const long Hour = 3_600_000;

    public ConcurrentQueue<TickEntry> Ticks { get; } = new();

    /// <summary>What an append does: true taken, false dropped.</summary>
    public Func<TickEntry, bool> Takes { get; set; } = _ => true;

    public bool Accepting { get; set; } = true;

    public RecordHealth Health => new(Accepting, Math.Max(Ticks.LastOrDefault()?.Decision.Sequence ?? 0, Accounts.Count > 0 ? Accounts[^1].LastSequence : 0), 0, 0, Accepting ? null : "The disk is full.");

    /// <summary>The arguments of the last question for samples.</summary>
    public List<(string Series, long From, long To, long Step)> Asked { get; } = [];

    public bool TryAppend(TickEntry tick)
    {
        bool taken = Takes(tick);
        if (taken)
        {
            Ticks.Enqueue(tick);
        }

        return taken;
    }

    public Task FlushAsync(CancellationToken cancellation) => Task.CompletedTask;

    public Task<Memory?> LastMemoryAsync(CancellationToken cancellation) => Task.FromResult<Memory?>(null);

    public Task<IReadOnlyList<IReadOnlyList<SeriesPoint>>> SamplesAsync(
        IReadOnlyList<string> series, long fromUtcMilliseconds, long toUtcMilliseconds, long stepMilliseconds,
        CancellationToken cancellation) => Task.FromResult<IReadOnlyList<IReadOnlyList<SeriesPoint>>>(
            [.. series.Select(one => Samples(one, fromUtcMilliseconds, toUtcMilliseconds, stepMilliseconds))]);

    public Task<IReadOnlyList<DecisionLine>> DecisionsAsync(DecisionAsk ask, CancellationToken cancellation)
    {
        IEnumerable<DecisionLine> lines = Enumerable.Range(0, 220)
            .Select(index => MadeUp.Line(1000 - index, ask.ToUtcMilliseconds - (index * 90 * 60_000L)))
            .Where(line => line.UtcMilliseconds >= ask.FromUtcMilliseconds && line.UtcMilliseconds < ask.ToUtcMilliseconds)
            .Where(line => ask.Kinds is null || (line.Kinds & ask.Kinds) != 0)
            .Where(line => (ask.Mode is null || line.Mode == ask.Mode) && (ask.Curb is null || line.Curb == ask.Curb))
            .Where(line => ask.Text is null || line.Why.Contains(ask.Text, StringComparison.OrdinalIgnoreCase));
        return Task.FromResult<IReadOnlyList<DecisionLine>>([.. lines.Take(ask.Limit)]);
    }

    private List<SeriesPoint> Samples(string series, long fromUtcMilliseconds, long toUtcMilliseconds, long stepMilliseconds)
    {
        lock (Asked)
        {
            Asked.Add((series, fromUtcMilliseconds, toUtcMilliseconds, stepMilliseconds));
        }

        List<SeriesPoint> points = [];
        long step = stepMilliseconds == 0 ? 10_000 : stepMilliseconds;
        for (long at = fromUtcMilliseconds / step * step; at < toUtcMilliseconds; at += step)
        {
            // A hole of three hours every two days, as a stopped service would leave.
            double? value = at / Hour % 48 is >= 20 and < 23 ? null : MadeUp.Value(series, at);
            points.Add(new SeriesPoint(at, value - 0.2, value, value + 0.2, value is null ? 0 : 60));
        }

        return points;
    }

    /// <summary>What the blocks came to, in order.</summary>
    public IReadOnlyList<BlockAccount> Accounts { get; set; } = [];

    public Task<IReadOnlyList<BlockAccount>> AccountsAsync(
        long afterSequence, int mostBlocks, Func<string, AccountRules> rulesOf, CancellationToken cancellation) =>
        Task.FromResult<IReadOnlyList<BlockAccount>>([.. Accounts.Where(a => a.FirstSequence > afterSequence).Take(mostBlocks)]);

    public Task<RecalledTick?> TickAsync(long sequence, ReplaySteps steps, CancellationToken cancellation) =>
        Task.FromResult(Ticks.FirstOrDefault(tick => tick.Decision.Sequence == sequence) is { } tick
            ? new RecalledTick(new RecordOrigin("", "", ""), tick.MemoryBefore, tick.Raw, tick.Commands, tick.Decision.At)
            : null);

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
