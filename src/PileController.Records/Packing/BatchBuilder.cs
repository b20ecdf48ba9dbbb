using System.Text.Json;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records.Queries;

namespace PileController.Records.Packing;

/// <summary>
/// Gathers ticks in columns until they are packed. The ticks of a batch follow each other without a gap, each
/// given what the one before handed on.
/// </summary>
/// <threadsafety>One thread at a time.</threadsafety>
internal sealed class BatchBuilder(RecordOrigin origin, int capacity)
{
    private readonly long[] _cells = new long[TickColumns.Count * capacity];
    private readonly DecisionDigest _digest = new();
    private readonly List<CommandAt> _commands = [];
    private readonly List<DecisionLine> _lines = [];
    private readonly BatchPacker _packer = new();
    private RecordOrigin _origin = origin;
    private JsonElement? _headText;
    private JsonElement? _tailText;
    private Memory? _head;
    private Memory? _tail;

    /// <summary>How many ticks are gathered.</summary>
    public int Count { get; private set; }

    /// <summary>True when no further tick fits.</summary>
    public bool IsFull => Count == capacity;

    /// <summary>Number of the first tick.</summary>
    public long FirstSequence { get; private set; }

    /// <summary>Whether <paramref name="tick"/> goes on where the batch ends.</summary>
    public bool IsContinuedBy(TickEntry tick) =>
        tick.Decision.Sequence == FirstSequence + Count
        && (ReferenceEquals(tick.MemoryBefore, _tail) || SameText(RecordJson.Of(tick.MemoryBefore), TailText));

    /// <summary>Adds one tick. The caller has made sure that it fits.</summary>
    public void Add(TickEntry tick)
    {
        if (Count == 0)
        {
            FirstSequence = tick.Decision.Sequence;
            _head = tick.MemoryBefore;
        }

        int row = Count++;
        _tail = tick.MemoryAfter;
        _tailText = null;
        Decision decision = tick.Decision;
        Cell(TickColumns.Utc, row) = decision.At.UtcMilliseconds;
        Cell(TickColumns.Monotonic, row) = decision.At.MonotonicMilliseconds;
        Cell(TickColumns.Offset, row) = decision.At.OffsetMinutes;
        Cell(TickColumns.Digest, row) = unchecked((long)_digest.Of(decision));
        Cell(TickColumns.Kinds, row) = (long)decision.Kinds;
        Cell(TickColumns.Mode, row) = (long)decision.Mode;
        AddFigures(decision, row);
        AddReadings(tick.Raw.AsSpan(), decision.Readings.AsSpan(), row);
        foreach (Command command in tick.Commands)
        {
            _commands.Add(new CommandAt(row, command));
        }

        if (decision.Kinds != DecisionKinds.Steady)
        {
            _lines.Add(LineOf(decision));
        }
    }

    /// <summary>Adds a whole packed batch.</summary>
    /// <exception cref="ArgumentException">It does not go on where this one ends, or there is no room for it.</exception>
    public void Add(PackedTicks pack)
    {
        PackedBatch batch = pack.Batch;
        if (Count + batch.Count > capacity || (Count > 0 && batch.FirstSequence != FirstSequence + Count))
        {
            throw new ArgumentException(
                $"A batch of {batch.Count} ticks from {batch.FirstSequence} does not fit {Count} of {capacity} from {FirstSequence}.",
                nameof(pack));
        }

        BatchText text = batch.Text();
        if (Count == 0)
        {
            FirstSequence = batch.FirstSequence;
            _headText = text.MemoryBefore;
            _origin = text.Origin;
        }

        for (int column = 0; column < TickColumns.Count; column++)
        {
            batch.Column(column, _cells.AsSpan((column * capacity) + Count, batch.Count));
        }

        _commands.AddRange(text.Commands.Select(c => c with { Row = c.Row + Count }));
        _lines.AddRange(pack.Lines?.All() ?? []);
        _tailText = text.MemoryAfter;
        _tail = null;
        Count += batch.Count;
    }

    /// <summary>Packs what was gathered; <paramref name="squeeze"/> spends time on making it small.</summary>
    public PackedTicks Pack(bool squeeze)
    {
        JsonElement head = _headText ?? RecordJson.Of(_head!);
        BatchText text = new(_origin, head, TailText, [.. _commands]);
        PackedBatch batch = _packer.Pack(FirstSequence, Count, _cells, capacity, text, squeeze);
        return new PackedTicks(batch, _lines.Count == 0 ? null : PackedLines.Of(_lines));
    }

    /// <summary>Forgets everything gathered.</summary>
    public void Clear()
    {
        Count = 0;
        _commands.Clear();
        _lines.Clear();
        _head = null;
        _tail = null;
        _headText = null;
        _tailText = null;
    }

    private JsonElement TailText => _tailText ??= RecordJson.Of(_tail!);

    private static bool SameText(JsonElement one, JsonElement other) => one.GetRawText() == other.GetRawText();

    private static DecisionLine LineOf(Decision decision) => new(
        decision.Sequence, decision.At.UtcMilliseconds, decision.Kinds, decision.Mode, decision.Curb, decision.WantWatts,
        decision.MeansWatts, decision.GrantWatts, decision.Draw.WaterWatts, decision.Estimate.ActiveZoneCelsius,
        HouseOf(decision), decision.Why, decision.Note);

    // A house probe that cannot be believed has no temperature to show.
    private static double? HouseOf(Decision decision) =>
        decision.Readings.TryGet(Channel.House, out double celsius) ? celsius : null;

    private ref long Cell(int column, int row) => ref _cells[(column * capacity) + row];

    private void AddFigures(Decision decision, int row)
    {
        IReadOnlyList<DecisionFigure> figures = DecisionSeries.All;
        for (int i = 0; i < TickColumns.Figures; i++)
        {
            DecisionFigure figure = figures[i];
            Cell(TickColumns.FirstFigure + i, row) = Rounded(figure.Of(decision) * figure.PerUnit);
        }
    }

    private static long Rounded(double steps) =>
        Math.Abs(steps) < TickColumns.MostFigure ? (long)Math.Round(steps, MidpointRounding.AwayFromZero) : TickColumns.NoFigure;

    private void AddReadings(ReadOnlySpan<Reading> raw, ReadOnlySpan<Reading> judged, int row)
    {
        for (int channel = 0; channel < raw.Length; channel++)
        {
            int column = TickColumns.FirstChannel + (channel * TickColumns.PerChannel);
            Cell(column + TickColumns.RawQuanta, row) = raw[channel].Quanta;
            Cell(column + TickColumns.RawQuality, row) = (byte)raw[channel].Quality;
            Cell(column + TickColumns.RawAge, row) = raw[channel].AgeMilliseconds;
            Cell(column + TickColumns.Quality, row) = (byte)judged[channel].Quality;
            Cell(column + TickColumns.QuantaShift, row) = (long)judged[channel].Quanta - raw[channel].Quanta;
        }
    }
}
