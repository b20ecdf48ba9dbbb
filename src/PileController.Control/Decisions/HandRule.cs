using PileController.Control.Interlocks;

namespace PileController.Control.Decisions;

/// <summary>Takes in what people asked for: holds by hand, trips to clear, work on the rig.</summary>
internal static class HandRule
{
    private const long MostMilliseconds = 24 * 3_600_000L;

    internal sealed record Result(
        HandHold[] Hands, InterlockMemory[] Interlocks, bool Servicing, ReportTick? Report, DecisionKinds Kinds, string? Note);

    public static Result Apply(
        HandHold[] hands, InterlockMemory[] interlocks, bool servicing, IReadOnlyList<Command> commands, long now)
    {
        HandHold[] left = hands;
        DecisionKinds kinds = DecisionKinds.Steady;
        string? note = null;
        if (hands.Length > 0 && Array.Exists(hands, h => h.UntilMonotonicMilliseconds <= now))
        {
            HandHold ended = Array.Find(hands, h => h.UntilMonotonicMilliseconds <= now)!;
            left = Array.FindAll(hands, h => h.UntilMonotonicMilliseconds > now);
            kinds |= DecisionKinds.Hand;
            note = $"By hand ended by itself: {Name(ended.Actuator)}.";
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
                    long until = now + Math.Clamp(take.Milliseconds, 1, MostMilliseconds);
                    HandHold hold = new(take.Actuator, Math.Clamp(take.Value, 0, 1), until, take.Who);
                    left = [.. left.Where(h => h.Actuator != take.Actuator), hold];
                    kinds |= DecisionKinds.Hand;
                    note = $"{take.Who} took the {Name(take.Actuator)} by hand at {hold.Value:P0} for {(until - now) / 60_000.0:0.#} min.";
                    break;
                case ReleaseHand release:
                    left = release.Actuator is { } one ? [.. left.Where(h => h.Actuator != one)] : [];
                    kinds |= DecisionKinds.Hand;
                    note = release.Actuator is { } given ? $"The {Name(given)} was given back." : "All was given back.";
                    break;
                case SetServicing set:
                    servicing = set.On;
                    kinds |= DecisionKinds.Hand;
                    note = set.On ? "Work on the rig begins: outputs are locked off." : "Work on the rig has ended.";
                    break;
                case ClearTrip clear:
                    (interlocks, note) = Clear(interlocks, clear.Interlock);
                    kinds |= DecisionKinds.Clear;
                    break;
            }
        }

        return new Result(left, interlocks, servicing, report, kinds, note);
    }

    /// <summary>The name of an actuator in a sentence.</summary>
    public static string Name(Actuator actuator) => actuator switch
    {
        Actuator.Pump => "pump",
        Actuator.Valve => "valve",
        Actuator.Blower => "blower",
        _ => "backup heat",
    };

    private static (InterlockMemory[] Memory, string Note) Clear(InterlockMemory[] interlocks, string id)
    {
        int i = InterlockTable.IndexOf(id);
        if (i < 0 || !interlocks[i].Latched)
        {
            return (interlocks, $"Nothing to clear: {id} is not tripped.");
        }

        // The pump stands while tripped, so the signals of a running pump are gone; for the others the cause must be.
        if (interlocks[i].Acting)
        {
            return (interlocks, $"Not cleared: {InterlockTable.All[i].Sentence} The cause still stands.");
        }

        InterlockMemory[] copy = (InterlockMemory[])interlocks.Clone();
        copy[i] = InterlockMemory.Fresh;
        return (copy, $"Cleared: {InterlockTable.All[i].Id}.");
    }
}
