namespace PileController.Records.Keeping;

/// <summary>
/// What was read lately, still packed, so that the panel's charts do not read the same pages again. What is stored never
/// changes. Checks go to the disk and past this.
/// </summary>
/// <param name="mostBytes">So many bytes are kept; the oldest go first.</param>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class Recent<TKey, TValue>(long mostBytes)
    where TKey : notnull
{
    private readonly Dictionary<TKey, TValue> _values = [];
    private readonly Queue<(TKey Key, int Bytes)> _order = [];
    private long _bytes;

    /// <summary>What is kept under a key, or what <paramref name="open"/> reads.</summary>
    /// <param name="key">The key.</param>
    /// <param name="open">Reads it, and tells how many bytes it takes.</param>
    public TValue Open(TKey key, Func<(TValue Value, int Bytes)> open)
    {
        if (_values.TryGetValue(key, out TValue? known))
        {
            return known;
        }

        (TValue value, int bytes) = open();
        _values.Add(key, value);
        _order.Enqueue((key, bytes));
        _bytes += bytes;
        while (_bytes > mostBytes && _order.TryDequeue(out (TKey Key, int Bytes) oldest))
        {
            _values.Remove(oldest.Key);
            _bytes -= oldest.Bytes;
        }

        return value;
    }
}
