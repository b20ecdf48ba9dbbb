using PileController.Plans.Ahead;

namespace PileController.Panel.Planning;

/// <summary>How a run of seasons stands.</summary>
/// <param name="State">"none", "running" or "done".</param>
/// <param name="Share">Share of the seasons that are done, 0 to 1.</param>
/// <param name="Seasons">How many were asked for; 0 when none.</param>
/// <param name="Result">What they came to, once done.</param>
/// <param name="Fault">Why the last run ended without a result, or null.</param>
internal sealed record AheadBody(string State, double Share, int Seasons, AheadAnswer? Result, string? Fault);

/// <summary>
/// Runs seasons ahead of the running holding one after another, on one thread that the ticks go before. One run at a
/// time; it ends with the program.
/// </summary>
/// <threadsafety>Safe for use by several threads.</threadsafety>
internal sealed class AheadDesk(PanelSetup setup, IHostApplicationLifetime lifetime)
{
    private readonly Lock _gate = new();
    private AheadBody _body = new("none", 0, 0, null, null);
    private CancellationTokenSource? _run;

    /// <summary>How it stands.</summary>
    public AheadBody Body
    {
        get
        {
            lock (_gate)
            {
                return _body;
            }
        }
    }

    /// <summary>Starts a run; false while another is under way.</summary>
    public bool TryStart(int seasons)
    {
        CancellationTokenSource run;
        lock (_gate)
        {
            if (_run is not null)
            {
                return false;
            }

            _run = run = CancellationTokenSource.CreateLinkedTokenSource(lifetime.ApplicationStopping);
            _body = new AheadBody("running", 0, seasons, null, null);
        }

        QuietThread.Start("ahead", () => Run(seasons, run));
        return true;
    }

    /// <summary>Gives the run up, if there is one.</summary>
    public void Cancel()
    {
        lock (_gate)
        {
            _run?.Cancel();
        }
    }

    private void Run(int seasons, CancellationTokenSource run)
    {
        AheadBody end;
        try
        {
            end = new AheadBody("done", 1, seasons, Reckon(seasons, run.Token), null);
        }
        catch (OperationCanceledException) when (run.IsCancellationRequested)
        {
            end = new AheadBody("none", 0, 0, null, null);
        }
        catch (Exception fault)
        {
            // A thread of its own must not take the program with it; whoever asks is told.
            end = new AheadBody("none", 0, 0, null, fault.Message);
        }

        lock (_gate)
        {
            _body = end;
            _run = null;
            run.Dispose();
        }
    }

    private AheadAnswer Reckon(int seasons, CancellationToken stop)
    {
        AheadRequest request = PlanSeason.Ahead(setup.Settings, seasons);
        List<SeasonOutcome> outcomes = [];
        while (outcomes.Count < seasons)
        {
            stop.ThrowIfCancellationRequested();
            outcomes.Add(setup.Season(request, outcomes.Count, stop));
            lock (_gate)
            {
                _body = _body with { Share = outcomes.Count / (double)seasons };
            }
        }

        return AheadAnswer.Of(request, outcomes);
    }
}
