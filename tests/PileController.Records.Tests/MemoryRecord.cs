using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Records.Accounts;
using PileController.Records.Checking;

namespace PileController.Records.Tests;

/// <summary>A record in a list: the plainest thing that keeps the contract.</summary>
public sealed class MemoryRecord : IPileRecord
{
    private readonly List<TickEntry> _ticks = [];

    public RecordHealth Health
    {
        get
        {
            lock (_ticks)
            {
                return new RecordHealth(true, _ticks.Count == 0 ? 0 : _ticks[^1].Decision.Sequence, 0, 0, null);
            }
        }
    }

    public bool TryAppend(TickEntry tick)
    {
        lock (_ticks)
        {
            _ticks.Add(tick);
            return true;
        }
    }

    public Task FlushAsync(CancellationToken cancellation) => Task.CompletedTask;

    public Task<Memory?> LastMemoryAsync(CancellationToken cancellation)
    {
        lock (_ticks)
        {
            return Task.FromResult(_ticks.Count == 0 ? null : _ticks[^1].MemoryAfter);
        }
    }

    public Task<IReadOnlyList<IReadOnlyList<SeriesPoint>>> SamplesAsync(
        IReadOnlyList<string> series, long fromUtcMilliseconds, long toUtcMilliseconds, long stepMilliseconds,
        CancellationToken cancellation) => Task.FromResult<IReadOnlyList<IReadOnlyList<SeriesPoint>>>(
            [.. series.Select(one => Samples(one, fromUtcMilliseconds, toUtcMilliseconds, stepMilliseconds))]);

    public Task<IReadOnlyList<DecisionLine>> DecisionsAsync(DecisionAsk ask, CancellationToken cancellation) =>
        Task.FromResult<IReadOnlyList<DecisionLine>>([.. Between(ask.FromUtcMilliseconds, ask.ToUtcMilliseconds)
            .Select(tick => tick.Decision)
            .Where(d => ask.Kinds is null ? d.Kinds != DecisionKinds.Steady : (d.Kinds & ask.Kinds) != 0)
            .Where(d => (ask.Mode is null || d.Mode == ask.Mode) && (ask.Curb is null || d.Curb == ask.Curb))
            .Where(d => ask.Text is null || $"{d.Why}\n{d.Note}".Contains(ask.Text, StringComparison.OrdinalIgnoreCase))
            .Reverse().Take(ask.Limit).Select(LineOf)]);

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private List<SeriesPoint> Samples(string series, long fromUtcMilliseconds, long toUtcMilliseconds, long stepMilliseconds)
    {
        string name = RecordSeries.Find(series).Name;
        long step = stepMilliseconds == 0 ? 1 : stepMilliseconds;
        long spacing = stepMilliseconds == 0 ? 120_000 : stepMilliseconds;
        List<SeriesPoint> points = [];
        foreach (var bucket in Between(fromUtcMilliseconds, toUtcMilliseconds)
            .GroupBy(tick => (long)Math.Floor((double)tick.Decision.At.UtcMilliseconds / step) * step).OrderBy(g => g.Key))
        {
            if (points.Count > 0 && bucket.Key - points[^1].UtcMilliseconds > spacing)
            {
                points.Add(new SeriesPoint(points[^1].UtcMilliseconds + step, null, null, null, 0));
            }

            double[] good = [.. bucket.Select(tick => ValueOf(tick, name)).OfType<double>()];
            points.Add(good.Length == 0
                ? new SeriesPoint(bucket.Key, null, null, null, 0)
                : new SeriesPoint(bucket.Key, good.Min(), good.Average(), good.Max(), good.Length));
        }

        return points;
    }

    // The plainest blocks there are: one a tick.
    public Task<IReadOnlyList<BlockAccount>> AccountsAsync(
        long afterSequence, int mostBlocks, Func<string, AccountRules> rulesOf, CancellationToken cancellation) =>
        Task.FromResult<IReadOnlyList<BlockAccount>>([.. Between(long.MinValue, long.MaxValue)
            .Where(tick => tick.Decision.Sequence > afterSequence).Take(mostBlocks).Select(tick => AccountOf(tick, rulesOf("")))]);

    public Task<RecalledTick?> TickAsync(long sequence, ReplaySteps steps, CancellationToken cancellation)
    {
        TickEntry? tick = Between(long.MinValue, long.MaxValue).FirstOrDefault(one => one.Decision.Sequence == sequence);
        RecordOrigin origin = new("", "", "");
        return Task.FromResult(tick is null || steps(origin) is null
            ? null
            : new RecalledTick(origin, tick.MemoryBefore, tick.Raw, tick.Commands, tick.Decision.At));
    }

    private List<TickEntry> Between(long from, long to)
    {
        lock (_ticks)
        {
            return [.. _ticks.Where(t => t.Decision.At.UtcMilliseconds >= from && t.Decision.At.UtcMilliseconds < to)];
        }
    }

    private static DecisionLine LineOf(Decision d) => new(
        d.Sequence, d.At.UtcMilliseconds, d.Kinds, d.Mode, d.Curb, d.WantWatts, d.MeansWatts, d.GrantWatts, d.Draw.WaterWatts,
        d.Estimate.ActiveZoneCelsius, d.Readings.TryGet(Channel.House, out double house) ? house : null, d.Why, d.Note);

    private static BlockAccount AccountOf(TickEntry tick, AccountRules rules)
    {
        Decision d = tick.Decision;
        double seconds = rules.TickSeconds;
        bool running = d.Outputs.PumpDuty > 0;
        bool metered = d.Readings[Channel.Flow].IsGood && d.Readings[Channel.Supply].IsGood && d.Readings[Channel.Return].IsGood;
        bool night = rules.HourOf(d.At.UtcMilliseconds) < 9;
        double? house = night && d.Readings.TryGet(Channel.House, out double h) ? h : null;
        double? outside = night && d.Readings.TryGet(Channel.Outside, out double o) ? o : null;
        return new BlockAccount(
            "", d.Sequence, d.Sequence, d.At.UtcMilliseconds, d.At.UtcMilliseconds, d.At.UtcMilliseconds, tick.MemoryBefore.Totals,
            tick.MemoryAfter.Totals,
            new TickFigures(
                1, seconds, running ? seconds : 0, running && !metered ? seconds : 0,
                tick.MemoryAfter.Estimator.Lit && d.Estimate.ActiveZoneCelsius < rules.FloorCelsius ? seconds : 0,
                d.Mode == Mode.FrostGuard ? seconds : 0, d.MeansWatts > 0 ? seconds : 0, running ? 1 : 0,
                d.Kinds.HasFlag(DecisionKinds.Trip) ? 1 : 0, d.Estimate.GenerationWatts * seconds, seconds, house is null ? 0 : seconds,
                house < rules.HouseMinimumCelsius ? seconds : 0, house, outside),
            running, running);
    }

    private static double? ValueOf(TickEntry tick, string name)
    {
        Decision d = tick.Decision;
        if (ChannelTable.TryFind(name, out ChannelInfo channel))
        {
            return d.Readings.TryGet(channel.Channel, out double value) ? value : null;
        }

        return name switch
        {
            "want" => d.WantWatts,
            "means" => d.MeansWatts,
            "grant" => d.GrantWatts,
            "waterDraw" => d.Draw.WaterWatts,
            "waterError" => d.Draw.WaterErrorWatts,
            "airDraw" => d.Draw.AirWatts,
            "activeZone" => d.Estimate.ActiveZoneCelsius,
            "setPoint" => d.HouseSetPointCelsius,
            "pumpDuty" => d.Outputs.PumpDuty,
            "valveOpening" => d.Outputs.ValveOpening,
            "blowerDuty" => d.Outputs.BlowerDuty,
            "generation" => d.Estimate.GenerationWatts,
            "mode" => (double)d.Mode,
            _ => throw new ArgumentException($"No series '{name}'.", nameof(name)),
        };
    }
}
