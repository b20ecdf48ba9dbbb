namespace PileController.Records.Checking;

/// <summary>The steps that were found so far, so that a block's settings are not read again.</summary>
/// <threadsafety>Safe from any thread; asks for one step at a time.</threadsafety>
internal sealed class KnownSteps(ReplaySteps steps)
{
    private readonly Lock _gate = new();
    private readonly Dictionary<RecordOrigin, ReplayStep?> _known = [];

    /// <summary>Control for a block's origin, or null when its settings are not to be had.</summary>
    public ReplayStep? Of(RecordOrigin origin)
    {
        lock (_gate)
        {
            if (!_known.TryGetValue(origin, out ReplayStep? step))
            {
                step = steps(origin);
                _known.Add(origin, step);
            }

            return step;
        }
    }
}
