namespace PileController.Service;

/// <summary>What went wrong in the loop since the start, in numbers. Written by the loop, read by anyone.</summary>
/// <threadsafety>Safe for use by several threads.</threadsafety>
public sealed class TickCounts
{
    private long _missed;
    private long _stepFaults;
    private long _rigFaults;
    private volatile string? _lastFault;
    private volatile bool _answers;
    private volatile bool _obeys;

    /// <summary>Ticks that fell out because the one before took too long or the machine stood still.</summary>
    public long Missed => Interlocked.Read(ref _missed);

    /// <summary>Ticks at which control failed and the outputs were made safe.</summary>
    public long StepFaults => Interlocked.Read(ref _stepFaults);

    /// <summary>Times the rig could not be read or told.</summary>
    public long RigFaults => Interlocked.Read(ref _rigFaults);

    /// <summary>What went wrong last, in a sentence, or null.</summary>
    public string? LastFault => _lastFault;

    /// <summary>Whether the newest readings came from the rig; false before the first.</summary>
    public bool RigAnswers { get => _answers; internal set => _answers = value; }

    /// <summary>Whether the rig took the newest outputs; false before the first.</summary>
    public bool RigObeys { get => _obeys; internal set => _obeys = value; }

    internal void AddMissed(long ticks) => Interlocked.Add(ref _missed, ticks);

    internal long AddStepFault(string what)
    {
        _lastFault = what;
        return Interlocked.Increment(ref _stepFaults);
    }

    internal long AddRigFault(string what)
    {
        _lastFault = what;
        return Interlocked.Increment(ref _rigFaults);
    }
}
