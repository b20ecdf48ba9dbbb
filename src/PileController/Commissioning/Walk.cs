using PileController.Control.Decisions;

namespace PileController.Commissioning;

/// <summary>A test under way: which step it is at and what was seen so far. Immutable; each tick and each answer gives the next.</summary>
/// <param name="Procedure">The test.</param>
/// <param name="Traces">One trace a step so far; the last is of the step that runs, unless all are over.</param>
/// <param name="Stopped">Why it was given up, a sentence; null while it was not.</param>
internal sealed record Walk(Procedure Procedure, IReadOnlyList<PhaseTrace> Traces, string? Stopped)
{
    // Ticks that a command may take to show in what the actuators are told.
    private const int Patience = 3;

    /// <summary>Begins a test.</summary>
    public static Walk Begin(Procedure procedure) => new(procedure, [new PhaseTrace(procedure.Phases[0], [])], null);

    /// <summary>All steps are over, or it was given up.</summary>
    public bool Ended => Stopped is not null || Traces[^1].EndedSeconds is not null;

    /// <summary>The step that runs; null when none does.</summary>
    public Phase? Phase => Ended ? null : Traces[^1].Phase;

    /// <summary>Number of the step that runs, from 1.</summary>
    public int Step => Traces.Count;

    /// <summary>What is to be held by hand now.</summary>
    public IReadOnlyList<Move> Wanted => Phase?.Moves ?? [];

    /// <summary>How long the step that runs has lasted, s.</summary>
    public double ElapsedSeconds => Traces[^1] is { BeganSeconds: { } began, Looks: [.., var last] } ? last.Seconds - began : 0;

    /// <summary>Whether an answer is waited for.</summary>
    public bool AwaitsAnswer => Phase is { Asks: true } && Traces[^1].BeganSeconds is not null;

    /// <summary>Takes in a tick.</summary>
    public Walk Take(Look look)
    {
        if (Phase is not { } phase)
        {
            return this;
        }

        if (look.Stop is { } stop)
        {
            return GiveUp(stop);
        }

        PhaseTrace trace = Traces[^1];
        trace = trace with { Looks = [.. trace.Looks, look] };
        if (Disobeyed(look.Outputs, phase) is { } actuator)
        {
            string why = $"The {Procedure.Name(actuator)} is not told what the test asks for: an interlock outranks it, or the hold has ended. The sentence on the page says which.";
            return trace.BeganSeconds is not null || trace.Looks.Count > Patience ? GiveUp(why) : With(trace);
        }

        trace = trace with { BeganSeconds = trace.BeganSeconds ?? look.Seconds };
        double elapsed = look.Seconds - trace.BeganSeconds.Value;
        if (phase.Asks)
        {
            return elapsed >= phase.MostSeconds
                ? GiveUp($"Nobody answered within {phase.MostSeconds / 60:0} min, so what moved was given back.")
                : With(trace);
        }

        bool over = elapsed >= phase.MostSeconds || (elapsed >= phase.LeastSeconds && (phase.Enough?.Invoke(trace.Since) ?? true));
        return over ? Next(trace with { EndedSeconds = look.Seconds }) : With(trace);
    }

    /// <summary>The grower says that the step is done.</summary>
    /// <param name="seconds">When, s on the clock of the looks.</param>
    /// <param name="figure">The number answered, or null.</param>
    /// <param name="text">The words answered, or null.</param>
    public Walk Answer(double seconds, double? figure = null, string? text = null) => AwaitsAnswer
        ? Next(Traces[^1] with { EndedSeconds = Math.Max(seconds, Traces[^1].BeganSeconds!.Value), Figure = figure, Text = text })
        : this;

    /// <summary>Gives it up.</summary>
    /// <param name="why">A sentence.</param>
    public Walk GiveUp(string why) => this with { Stopped = why };

    /// <summary>What was found; empty while it runs.</summary>
    public IReadOnlyList<Outcome> Found() => !Ended ? []
        : Stopped is null ? Procedure.Judge(new Trace(Traces))
        : [new Outcome(Procedure.Id, Soundness.Failed, $"{Procedure.Title}: given up at step {Step} of {Procedure.Phases.Count}. {Stopped}")];

    private Walk With(PhaseTrace trace) => this with { Traces = [.. Traces.SkipLast(1), trace] };

    private Walk Next(PhaseTrace over)
    {
        Walk next = With(over);
        return Traces.Count == Procedure.Phases.Count
            ? next
            : next with { Traces = [.. next.Traces, new PhaseTrace(Procedure.Phases[Traces.Count], [])] };
    }

    private static Actuator? Disobeyed(Outputs told, Phase phase)
    {
        foreach (Move move in phase.Moves)
        {
            double value = told.Of(move.Actuator);

            // A relay knows no part of its duty: of pump and blower on and off are told apart.
            bool obeyed = move.Actuator is Actuator.Pump or Actuator.Blower ? value > 0 == move.Value > 0 : Math.Abs(value - move.Value) < 1e-6;
            if (!obeyed)
            {
                return move.Actuator;
            }
        }

        return null;
    }
}
