using PileController.Records.Packing;
using PileController.Records.Storage;

namespace PileController.Records.Keeping;

/// <summary>The first stage of a tick: what is packed and not yet safe anywhere waits here until it is appended to the tail.</summary>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class TailStage(TailFile tail, TimeProvider time, Faults faults)
{
    private readonly List<PackedTicks> _waiting = [];
    private readonly Backoff _backoff = new(time);

    /// <summary>What waits, oldest first.</summary>
    public IReadOnlyList<PackedTicks> Waiting => _waiting;

    /// <summary>How many ticks wait.</summary>
    public int Ticks => _waiting.Sum(pack => pack.Batch.Count);

    /// <summary>Whether another attempt may be made now.</summary>
    public bool MayTry => _backoff.MayTry;

    /// <summary>Takes what has been packed.</summary>
    public void Add(PackedTicks pack) => _waiting.Add(pack);

    /// <summary>Makes all that waits safe and hands it on. False when it could not be done; the reason is told.</summary>
    public bool TryAppend(StoreStage next)
    {
        try
        {
            if (_waiting.Count > 0)
            {
                tail.Append(_waiting);
                next.AddSafe(_waiting);
                _waiting.Clear();
                _backoff.Worked();
                faults.Over(FaultSource.Tail);
            }

            return true;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            _backoff.Failed();
            faults.Now(FaultSource.Tail, exception.Message);
            return false;
        }
    }
}
