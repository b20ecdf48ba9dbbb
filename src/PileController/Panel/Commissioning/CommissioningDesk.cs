using PileController.Commissioning;
using PileController.Commissioning.Running;
using PileController.Control.Decisions;
using PileController.Service;

namespace PileController.Panel.Commissioning;

/// <summary>A test that was begun at the page.</summary>
/// <param name="Walk">How it stands.</param>
/// <param name="Who">Who began it.</param>
/// <param name="Asker">The same as the session or key knows them, and from where.</param>
/// <param name="Kept">Whether it is on the sheet already, or on its way there.</param>
internal sealed record PageTest(Walk Walk, string Who, Asker Asker, bool Kept);

/// <summary>
/// Leads one test at a time beside the loop: it sees each tick, and what is to move goes the way of every hold by hand.
/// Should the page go away, the holds end by themselves.
/// </summary>
/// <threadsafety>Safe for use by several threads.</threadsafety>
internal sealed class CommissioningDesk(PanelSetup setup, CommandInbox inbox, PanelFeed feed, ILogger<CommissioningDesk> logger) : BesideService(logger)
{
    private readonly Lock _gate = new();
    private PageTest? _test;
    private Phase? _held;
    private long _settled;

    /// <summary>The test that was begun last; null when there is none, or it was put away.</summary>
    public PageTest? Test
    {
        get
        {
            lock (_gate)
            {
                return _test;
            }
        }
    }

    /// <summary>Whether what was asked for last, by a test that runs or is over, has not come to a tick yet.</summary>
    public bool IsSettling
    {
        get
        {
            lock (_gate)
            {
                return feed.Latest?.Sequence < _settled;
            }
        }
    }

    /// <summary>Begins a test.</summary>
    /// <returns>False when another one runs.</returns>
    public bool TryBegin(Procedure procedure, string who, Asker asker)
    {
        lock (_gate)
        {
            if (_test is { Walk.Ended: false })
            {
                return false;
            }

            _test = new PageTest(Walk.Begin(procedure), who, asker, Kept: false);
            Steer();
            return true;
        }
    }

    /// <summary>Takes an answer.</summary>
    /// <param name="step">The step that is answered, so that a tap too many answers nothing.</param>
    /// <param name="figure">The number, or null.</param>
    /// <param name="text">The words, or null.</param>
    /// <returns>False when that step waits for no answer.</returns>
    public bool TryAnswer(int step, double? figure, string? text)
    {
        lock (_gate)
        {
            if (_test is not { } test || !test.Walk.AwaitsAnswer || test.Walk.Step != step)
            {
                return false;
            }

            _test = test with { Walk = test.Walk.Answer(Seconds(test.Walk), figure, text) };
            Steer();
            return true;
        }
    }

    /// <summary>Gives up the test that runs, or puts away the one that is over.</summary>
    public void End()
    {
        lock (_gate)
        {
            _test = _test is { Walk.Ended: false } test ? test with { Walk = test.Walk.GiveUp("It was given up at the page.") } : null;
            Steer();
        }
    }

    /// <summary>Claims the test that is over for the sheet, so that nobody else puts it there as well.</summary>
    /// <returns>The test; null when none is over, or it was claimed before.</returns>
    public PageTest? TryClaim()
    {
        lock (_gate)
        {
            return _test is { Walk.Ended: true, Kept: false } test ? _test = test with { Kept = true } : null;
        }
    }

    /// <summary>Gives a claim back: the sheet could not be written.</summary>
    public void GiveBack(PageTest claimed)
    {
        lock (_gate)
        {
            _test = ReferenceEquals(_test, claimed) ? claimed with { Kept = false } : _test;
        }
    }

    /// <inheritdoc/>
    protected override async Task RunAsync(CancellationToken stopping)
    {
        long sequence = 0;
        while (true)
        {
            TickNews news = await feed.AfterAsync(sequence, stopping).ConfigureAwait(false);
            sequence = news.Sequence;
            lock (_gate)
            {
                if (_test is { Walk.Ended: false } test)
                {
                    _test = test with { Walk = test.Walk.Take(Look.Of(news.Decision, news.Raw)) };
                }

                Steer();
            }
        }
    }

    private void Steer()
    {
        Phase? wanted = _test?.Walk.Phase;
        foreach (Command command in Holds.Between(_held, wanted, _test?.Who ?? "", setup.Speed))
        {
            // What the inbox does not take is asked for again at the next tick, as a whole.
            if (!inbox.TryPost(command with { Asker = _test?.Asker }, out _settled))
            {
                return;
            }
        }

        _held = wanted;
    }

    // An answer counts from when it was given, between two ticks.
    private double Seconds(Walk walk) => walk.Traces[^1].Looks[^1].Seconds
        + Math.Min((feed.Age?.TotalSeconds ?? 0) * setup.Speed, setup.Control.TickSeconds);
}
