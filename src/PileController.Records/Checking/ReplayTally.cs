namespace PileController.Records.Checking;

/// <summary>Adds up batches that were run again, in their order.</summary>
internal sealed class ReplayTally
{
    private readonly List<ReplayStretch> _stretches = [];
    private readonly List<string> _problems = [];

    /// <summary>Ticks so far, those whose settings are not kept included.</summary>
    public long Ticks { get; private set; }

    /// <summary>Adds the next batch.</summary>
    public void Add(BatchReplay replay)
    {
        Ticks += replay.Ticks;
        if (replay.Problem is { } problem)
        {
            _problems.Add(problem);
            return;
        }

        if (_stretches.Count == 0 || _stretches[^1].Origin != replay.Origin)
        {
            _stretches.Add(new ReplayStretch(replay.Origin!, replay.Head.FirstSequence, 0, 0, 0, null));
        }

        ReplayStretch stretch = _stretches[^1];
        _stretches[^1] = stretch with
        {
            LastSequence = replay.Head.LastSequence,
            Ticks = stretch.Ticks + replay.Ticks,
            Identical = stretch.Identical + replay.Identical,
            FirstDifference = stretch.FirstDifference ?? replay.FirstDifference,
        };
    }

    /// <summary>All of it.</summary>
    public ReplayReport Report() => new(
        Ticks, _stretches.Sum(stretch => stretch.Identical),
        _stretches.Select(stretch => stretch.FirstDifference).FirstOrDefault(first => first is not null), _stretches, _problems);
}
