using System.Globalization;
using PileController.Control.Interlocks;

namespace PileController.Control.Decisions;

/// <summary>Takes in what people asked for: holds by hand, trips to clear, work on the rig.</summary>
internal static class HandRule
{
    private const long MostMilliseconds = 24 * 3_600_000L;

    internal readonly record struct Result(
        HandHold[] Hands, InterlockMemory[] Interlocks, bool Servicing, ReportTick? Report, DecisionKinds Kinds, string? Note)
    {
        /// <summary>The same with one thing more to tell.</summary>
        public Result With(DecisionKinds kinds, string note) => this with { Kinds = Kinds | kinds, Note = Add(Note, note) };
    }

    public static Result Apply(
        HandHold[] hands, InterlockMemory[] interlocks, bool servicing, IReadOnlyList<Command> commands, long now)
    {
        DecisionKinds kinds = DecisionKinds.Steady;
        HandHold[] left = Ended(hands, now, out string? note);
        if (note is not null)
        {
            kinds |= DecisionKinds.Hand;
        }

        ReportTick? report = null;
        for (int i = 0; i < commands.Count; i++)
        {
            switch (commands[i])
            {
                case ReportTick said:
                    report = said;
                    break;
                case TakeByHand take:
                    (left, string taken) = Take(left, take, now);
                    note = Add(note, taken);
                    kinds |= DecisionKinds.Hand;
                    break;
                case ReleaseHand release:
                    left = release.Actuator is { } one ? Without(left, one) : [];
                    kinds |= DecisionKinds.Hand;
                    note = Add(note, release.Actuator is { } given ? $"The {Name(given)} was given back." : "All was given back.");
                    break;
                case SetServicing set:
                    servicing = set.On;
                    kinds |= DecisionKinds.Hand;
                    note = Add(note, set.On ? "Work on the rig begins: outputs are locked off." : "Work on the rig has ended.");
                    break;
                case ClearTrip clear:
                    (interlocks, string cleared) = Clear(interlocks, clear.Interlock);
                    note = Add(note, cleared);
                    kinds |= DecisionKinds.Clear;
                    break;
            }
        }

        return new Result(left, interlocks, servicing, report, kinds, note);
    }

    /// <summary>
    /// A trip ends every hold: when it is cleared nothing starts by itself that a person has not asked for anew.
    /// </summary>
    public static Result EndedByTrip(in Result asked) => asked with
    {
        Hands = [],
        Kinds = asked.Kinds | DecisionKinds.Hand,
        Note = Add(asked.Note, "The trip ended what was held by hand."),
    };

    /// <summary>The value at which an actuator is held, or null.</summary>
    public static double? Held(HandHold[] hands, Actuator actuator)
    {
        foreach (HandHold hand in hands)
        {
            if (hand.Actuator == actuator)
            {
                return hand.Value;
            }
        }

        return null;
    }

    /// <summary>The name of an actuator in a sentence.</summary>
    public static string Name(Actuator actuator) => actuator switch
    {
        Actuator.Pump => "pump",
        Actuator.Valve => "valve",
        Actuator.Blower => "blower",
        _ => "backup heat",
    };

    // Several things may be said in one tick; none of them is lost.
    private static string Add(string? note, string more) => note is null ? more : $"{note} {more}";

    // A plain loop: a closure would be made every tick, whether anything is held or not.
    private static HandHold[] Ended(HandHold[] hands, long now, out string? note)
    {
        note = null;
        HandHold[] left = hands;
        foreach (HandHold hand in hands)
        {
            if (hand.UntilMonotonicMilliseconds <= now)
            {
                left = Without(left, hand.Actuator);
                note ??= $"By hand ended by itself: {Name(hand.Actuator)}.";
            }
        }

        return left;
    }

    private static (HandHold[] Hands, string Note) Take(HandHold[] hands, TakeByHand take, long now)
    {
        if (!double.IsFinite(take.Value) || !Enum.IsDefined(take.Actuator))
        {
            string given = take.Value.ToString(CultureInfo.InvariantCulture);
            return (hands, $"Not taken by hand: the {Name(take.Actuator)} was given {given}; allowed is 0 to 1 for pump, valve, blower or backup heat.");
        }

        long held = Math.Clamp(take.Milliseconds, 1, MostMilliseconds);
        HandHold hold = new(take.Actuator, Math.Clamp(take.Value, 0, 1), now + held, take.Who);
        string note = string.Create(
            CultureInfo.InvariantCulture,
            $"{take.Who} took the {Name(take.Actuator)} by hand at {hold.Value * 100:0} % for {held / 60_000.0:0.#} min.");
        return ([.. Without(hands, take.Actuator), hold], note);
    }

    private static HandHold[] Without(HandHold[] hands, Actuator actuator) => Array.FindAll(hands, h => h.Actuator != actuator);

    private static (InterlockMemory[] Memory, string Note) Clear(InterlockMemory[] interlocks, string id)
    {
        int i = InterlockTable.IndexOf(id);
        if (i < 0 || !InterlockMemory.Of(interlocks, i).Latched)
        {
            return (interlocks, $"Nothing to clear: {id} is not tripped.");
        }

        // The pump stands while tripped, so the signals of a running pump are gone; for the others the cause must be.
        // A cause that is back but not yet for long enough to act still stands.
        if (interlocks[i].Acting || interlocks[i].SinceMilliseconds >= 0)
        {
            return (interlocks, $"Not cleared: {InterlockTable.All[i].Sentence} The cause still stands.");
        }

        InterlockMemory[] copy = (InterlockMemory[])interlocks.Clone();
        copy[i] = InterlockMemory.Fresh;
        return (copy, $"Cleared: {InterlockTable.All[i].Id}.");
    }
}
