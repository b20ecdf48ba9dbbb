namespace PileController.Records.Keeping;

/// <summary>Spaces out attempts at something that fails: 1 s after the first failure, twice as long after each further one, at most 60 s.</summary>
internal sealed class Backoff(TimeProvider time)
{
    private static readonly TimeSpan First = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);
    private TimeSpan _pause;
    private long _failedAt;

    /// <summary>Whether another attempt may be made now.</summary>
    public bool MayTry => _pause == TimeSpan.Zero || time.GetElapsedTime(_failedAt) >= _pause;

    /// <summary>Notes a failure.</summary>
    public void Failed()
    {
        _failedAt = time.GetTimestamp();
        TimeSpan next = _pause == TimeSpan.Zero ? First : _pause * 2;
        _pause = next < Longest ? next : Longest;
    }

    /// <summary>Notes a success.</summary>
    public void Worked() => _pause = TimeSpan.Zero;
}
