using PileController.Records.Packing;

namespace PileController.Records.Queries;

/// <summary>
/// What was read of days that have been summed up, as many of the newest as there is room for. A question that goes back
/// beyond them reads the older ones each time, instead of driving out what the next question begins with.
/// </summary>
/// <param name="mostBytes">So many bytes are kept.</param>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class NewestDays<TValue>(long mostBytes)
{
    private readonly SortedDictionary<long, (BatchHead Day, TValue Value, int Bytes)> _known = [];

    /// <summary>Bytes that are kept now.</summary>
    public long Bytes { get; private set; }

    /// <summary>What is kept of a day, or what <paramref name="open"/> reads.</summary>
    /// <param name="day">The day.</param>
    /// <param name="open">Reads it, and tells how many bytes it takes.</param>
    public TValue Open(BatchHead day, Func<(TValue Value, int Bytes)> open)
    {
        if (_known.TryGetValue(day.FirstSequence, out (BatchHead Day, TValue Value, int Bytes) known) && known.Day == day)
        {
            return known.Value;
        }

        (TValue value, int bytes) = open();
        Forget(day.FirstSequence);
        _known.Add(day.FirstSequence, (day, value, bytes));
        Bytes += bytes;
        while (Bytes > mostBytes)
        {
            Forget(_known.First().Key);
        }

        return value;
    }

    private void Forget(long firstSequence)
    {
        if (_known.Remove(firstSequence, out (BatchHead Day, TValue Value, int Bytes) gone))
        {
            Bytes -= gone.Bytes;
        }
    }
}
