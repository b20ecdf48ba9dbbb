using PileController.Control;
using PileController.Control.Interlocks;
using PileController.Control.Readings;
using PileController.Panel.Now;
using Judged = PileController.Control.Decisions.Verdict;

namespace PileController.Alarms;

/// <summary>What the alarms are told of the place.</summary>
/// <param name="Control">What control is told.</param>
/// <param name="Interlocks">The interlocks, in the order of the verdicts.</param>
/// <param name="Fitted">The channels that have a probe.</param>
public sealed record AlarmPlace(ControlSettings Control, IReadOnlyList<Interlock> Interlocks, IReadOnlyList<Channel> Fitted)
{
    /// <summary>What people call a channel's probe here.</summary>
    public Func<Channel, string> NameOf { get; init; } = ProbeWords.Label;

    /// <summary>Whether a channel has a probe.</summary>
    public bool Has(Channel channel) => Fitted.Contains(channel);

    /// <summary>
    /// The sign of an interlock: its limit is passed, or it acts, or it has tripped. A delay that is the interlock's own
    /// persistence thus ends at the tick at which it acts. Null where it is blind, or where there is no such interlock.
    /// </summary>
    /// <param name="id">Its id.</param>
    internal AlarmSign Interlock(string id)
    {
        Func<AlarmFacts, Judged?> verdict = Verdict(id);
        return (facts, _) => verdict(facts) switch
        {
            null or Judged.Blind => null,
            Judged.Clear => false,
            _ => true,
        };
    }

    /// <summary>Whether an interlock has tripped: what explains a trip is told at the tick of the trip.</summary>
    /// <param name="id">Its id.</param>
    internal Func<AlarmFacts, bool> Trips(string id)
    {
        Func<AlarmFacts, Judged?> verdict = Verdict(id);
        return facts => verdict(facts) is Judged.Latched;
    }

    private Func<AlarmFacts, Judged?> Verdict(string id)
    {
        int index = Interlocks.ToList().FindIndex(row => row.Id == id);
        return facts => index < 0 || facts.Decision is not { } decision || index >= decision.Verdicts.Length ? null : decision.Verdicts[index];
    }

    /// <summary>How long an interlock's limit must be passed before it acts, s; of a pump's proof the time it has just after its start.</summary>
    /// <param name="id">Its id.</param>
    internal double Persistence(string id) => id == "noFlow"
        ? Control.Limits.NoFlowGraceSeconds
        : (Interlocks.FirstOrDefault(row => row.Id == id)?.PersistenceMilliseconds ?? 0) * 0.001;
}
