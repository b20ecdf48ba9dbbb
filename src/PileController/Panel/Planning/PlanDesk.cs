using PileController.Plans.Sketch;
using PileController.Settings;

namespace PileController.Panel.Planning;

/// <summary>
/// Answers what-ifs one at a time, on a thread that the ticks go before. Each page waits with its newest question only,
/// so however fast a slider is moved there is one sum that runs and one that waits.
/// </summary>
/// <threadsafety>Safe for use by several threads.</threadsafety>
internal sealed class PlanDesk(PanelSetup setup, IHostApplicationLifetime lifetime)
{
    /// <summary>Pages that may wait at one time.</summary>
    public const int MostPages = 8;

    private const int MostKept = 16;

    private readonly Func<PileSettings, PlanSketch> _sketch = setup.Sketch ?? PlanSeason.Sketcher(setup.Settings);
    private readonly Lock _gate = new();
    private readonly List<Question> _waiting = [];
    private readonly List<(string Key, PlanSketch Sketch)> _kept = [];
    private bool _working;

    /// <summary>Asks for a sketch.</summary>
    /// <param name="page">Whose question it is; a newer one of the same page takes its place.</param>
    /// <param name="key">The same for the same settings.</param>
    /// <param name="settings">The settings to sketch.</param>
    /// <param name="cancellation">Takes the question back.</param>
    /// <returns>The sketch, or null when a newer question of that page came first; null instead of a task when too many pages wait.</returns>
    public Task<PlanSketch?>? Ask(string page, string key, PileSettings settings, CancellationToken cancellation)
    {
        Question question = new(page, key, settings);
        Question? older;
        bool start;
        lock (_gate)
        {
            older = _waiting.Find(one => one.Page == page);
            if (older is null && _waiting.Count >= MostPages)
            {
                return null;
            }

            // The newer takes the older's place in the row: a busy page neither gains nor loses by asking often.
            if (older is not null)
            {
                _waiting[_waiting.IndexOf(older)] = question;
            }
            else
            {
                _waiting.Add(question);
            }

            start = !_working;
            _working = true;
        }

        older?.Answer.TrySetResult(null);
        if (start)
        {
            QuietThread.Start("plan", Work);
        }

        return WaitAsync(question, cancellation);
    }

    private async Task<PlanSketch?> WaitAsync(Question question, CancellationToken cancellation)
    {
        using CancellationTokenSource ended = CancellationTokenSource.CreateLinkedTokenSource(cancellation, lifetime.ApplicationStopping);
        try
        {
            return await question.Answer.Task.WaitAsync(ended.Token).ConfigureAwait(false);
        }
        finally
        {
            lock (_gate)
            {
                _waiting.Remove(question);
            }
        }
    }

    private void Work()
    {
        while (Next() is { } question)
        {
            try
            {
                question.Answer.TrySetResult(Kept(question.Key) ?? Sketch(question));
            }
            catch (Exception fault)
            {
                // Whoever asked is told; the next question has its chance.
                question.Answer.TrySetException(fault);
            }
        }
    }

    private Question? Next()
    {
        lock (_gate)
        {
            if (_waiting.Count == 0 || lifetime.ApplicationStopping.IsCancellationRequested)
            {
                _working = false;
                return null;
            }

            Question next = _waiting[0];
            _waiting.RemoveAt(0);
            return next;
        }
    }

    private PlanSketch? Kept(string key)
    {
        lock (_gate)
        {
            return _kept.Find(one => one.Key == key).Sketch;
        }
    }

    private PlanSketch Sketch(Question question)
    {
        PlanSketch sketch = _sketch(question.Settings);
        lock (_gate)
        {
            if (_kept.Count == MostKept)
            {
                _kept.RemoveAt(0);
            }

            _kept.Add((question.Key, sketch));
        }

        return sketch;
    }

    private sealed class Question(string page, string key, PileSettings settings)
    {
        public string Page => page;

        public string Key => key;

        public PileSettings Settings => settings;

        // The answer must not run the asker's code on the quiet thread.
        public TaskCompletionSource<PlanSketch?> Answer { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);
    }
}
