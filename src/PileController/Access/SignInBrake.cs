namespace PileController.Access;

/// <summary>
/// Slows down whoever guesses: after each failure a source waits twice as long, up to a minute, and all sources
/// together may fail a few dozen times a minute. Whoever is signed in never passes here.
/// </summary>
/// <threadsafety>Safe from any thread.</threadsafety>
internal sealed class SignInBrake
{
    private const long Second = 1000;
    private const long LongestWait = 60 * Second;
    private const long ForgottenAfter = 15 * 60 * Second;
    private const int MostSources = 256;
    private const int TogetherAtOnce = 20;
    private const long TogetherEach = 3 * Second;

    private readonly Lock _gate = new();
    private readonly Dictionary<string, Tries> _sources = [];
    private long _togetherFrom;
    private int _running;

    /// <summary>Asks for one try.</summary>
    /// <param name="source">Where it comes from.</param>
    /// <param name="now">Any steady clock, milliseconds.</param>
    /// <returns>Null when it may be made, and must be told to <see cref="End"/>; else how long to wait, whole seconds.</returns>
    public int? Begin(string source, long now)
    {
        lock (_gate)
        {
            // A bucket that holds twenty failures and that one leaves every three seconds. What is being looked at counts as
            // failed until it is known: a storm would be past before the first of it has.
            long together = Math.Max(_togetherFrom, now) + (_running * TogetherEach) - now - (TogetherAtOnce * TogetherEach);
            Tries? known = _sources.GetValueOrDefault(source);
            if (known is { Running: true })
            {
                return 1;
            }

            long wait = Math.Max(together, known?.FreeAt - now ?? 0);
            if (wait > 0)
            {
                return (int)((wait + Second - 1) / Second);
            }

            MakeRoom(now);
            _running++;
            _sources[source] = (known is not null && now - known.LastAt < ForgottenAfter ? known : new Tries()) with { Running = true, LastAt = now };
            return null;
        }
    }

    /// <summary>Tells how a try ended.</summary>
    /// <param name="source">Where it came from.</param>
    /// <param name="good">Whether it was right; null when it was not looked at.</param>
    /// <param name="now">The same clock.</param>
    public void End(string source, bool? good, long now)
    {
        lock (_gate)
        {
            _running--;
            Tries tries = _sources.GetValueOrDefault(source) ?? new Tries();
            if (good == true)
            {
                _sources.Remove(source);
            }
            else if (good is null)
            {
                _sources[source] = tries with { Running = false };
            }
            else
            {
                long wait = Math.Min(LongestWait, Second << Math.Min(tries.Failures, 6));
                _sources[source] = new Tries(tries.Failures + 1, now + wait, now, false);
                _togetherFrom = Math.Max(_togetherFrom, now) + TogetherEach;
            }
        }
    }

    private void MakeRoom(long now)
    {
        if (_sources.Count < MostSources)
        {
            return;
        }

        foreach (string old in _sources.Where(s => !s.Value.Running && now - s.Value.LastAt >= ForgottenAfter).Select(s => s.Key).ToArray())
        {
            _sources.Remove(old);
        }

        if (_sources.Count >= MostSources)
        {
            _sources.Remove(_sources.OrderBy(s => s.Value.Running).ThenBy(s => s.Value.LastAt).First().Key);
        }
    }

    private sealed record Tries(int Failures = 0, long FreeAt = 0, long LastAt = 0, bool Running = false);
}
