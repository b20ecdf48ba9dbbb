using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Settings;

namespace PileController.Commissioning.Procedures;

/// <summary>Each actuator is run, and must give the proof that it does what it is told.</summary>
internal static class Exercise
{
    private const double RestSeconds = 60;
    private const double RunSeconds = 90;

    // The flow must answer a valve that runs shut by half (common practice, no source).
    private const double ValveShare = 0.5;

    // Power above the noise of a shunt monitor: eight of its steps (common practice, no source).
    private const double LeastWatts = 1;

    /// <summary>The test.</summary>
    public static Procedure Of(PileSettings settings) => new(
        "exercise", "Exercise each actuator",
        ["Pump, valve and blower move, backup heat as well where there is some: keep hands and hoses clear, and nothing that burns before a heater."],
        [.. Steps(settings)],
        trace => [.. Judge(trace, settings)]);

    private static IEnumerable<Phase> Steps(PileSettings settings)
    {
        yield return new Phase("rest", "Everything stands for a minute: flow and power at rest are taken.") { Moves = Moves.Rest(settings), LeastSeconds = RestSeconds };
        yield return new Phase("pump", "The pump runs.") { Moves = Moves.Run(settings, 1), LeastSeconds = RunSeconds };
        if (!Fitted.Has(settings, Channel.Flow) && !Fitted.Has(settings, Channel.PumpPower))
        {
            yield return Eye("pump-eye", Moves.Run(settings, 1), "Does the pump run, and does water come back?");
        }

        if (Moves.HasValve(settings))
        {
            double most = (1.2 * settings.Loop.ValveTravelSeconds) + 30;
            bool flows = Fitted.Has(settings, Channel.Flow);
            yield return new Phase("valve-shut", "The valve runs shut while the pump runs; it opens again as soon as the flow has answered.")
            {
                Moves = Moves.ValveAlone(settings, 0, flows ? 1 : 0),
                MostSeconds = most,
                LeastSeconds = flows ? 0 : most,
                Enough = flows ? looks => Least(looks) <= ValveShare * looks[0].Of(Channel.Flow) : null,
            };
            if (!flows)
            {
                yield return Eye("valve-eye", Moves.ValveAlone(settings, 0), "Does the valve's pointer stand at shut?");
            }

            yield return new Phase("valve-open", "The valve runs open again.") { Moves = Moves.Rest(settings), LeastSeconds = most };
        }

        if (settings.Control.BlowerFitted)
        {
            IReadOnlyList<Move> blows = [.. Moves.Rest(settings).Where(move => move.Actuator != Actuator.Blower), new(Actuator.Blower, 1)];
            yield return new Phase("blower", "The blower runs.") { Moves = blows, LeastSeconds = 60 };
            if (!Fitted.Has(settings, Channel.BlowerPower))
            {
                yield return Eye("blower-eye", blows, "Does the blower run, and does air move?");
            }
        }

        if (settings.Control.BackupFitted)
        {
            IReadOnlyList<Move> heats = [.. Moves.Rest(settings), new(Actuator.Backup, 1)];
            yield return new Phase("backup", "Backup heat is called for.") { Moves = heats, LeastSeconds = 60 };
            yield return Eye("backup-eye", heats, "Does the backup heater run?");
        }

        yield return new Phase("end", "All stands again.") { Moves = [.. Moves.Rest(settings), .. settings.Control.BackupFitted ? [new Move(Actuator.Backup, 0)] : Array.Empty<Move>()], LeastSeconds = 20 };
    }

    private static Phase Eye(string id, IReadOnlyList<Move> moves, string question) =>
        new(id, "Go and look.") { Moves = moves, Asks = true, MostSeconds = 900, Question = Question.YesNo(question) };

    private static IEnumerable<Outcome> Judge(Trace trace, PileSettings settings)
    {
        IReadOnlyList<Look> rest = trace["rest"].Since;
        yield return Pump(trace, settings, rest);
        if (Moves.HasValve(settings))
        {
            yield return Fitted.Has(settings, Channel.Flow) ? Valve(trace) : Seen(Actuator.Valve, trace["valve-eye"]);
        }

        if (settings.Control.BlowerFitted)
        {
            yield return Fitted.Has(settings, Channel.BlowerPower)
                ? Powered(Actuator.Blower, rest, trace["blower"].Since, Channel.BlowerPower)
                : Seen(Actuator.Blower, trace["blower-eye"]);
        }

        if (settings.Control.BackupFitted)
        {
            yield return Seen(Actuator.Backup, trace["backup-eye"]);
        }
    }

    private static Outcome Pump(Trace trace, PileSettings settings, IReadOnlyList<Look> rest)
    {
        PhaseTrace run = trace["pump"];
        if (!Fitted.Has(settings, Channel.Flow))
        {
            return Fitted.Has(settings, Channel.PumpPower) ? Powered(Actuator.Pump, rest, run.Since, Channel.PumpPower) : Seen(Actuator.Pump, trace["pump-eye"]);
        }

        double least = settings.Control.Limits.NoFlowLitresPerMinute;
        bool still = Series.Of(rest.Skip(rest.Count / 2).ToArray(), Channel.Flow).Mean < least;
        Look? moved = run.Since.Skip(1).FirstOrDefault(look => look.Of(Channel.Flow) >= least);
        bool powered = !Fitted.Has(settings, Channel.PumpPower) || Rise(rest, run.Since, Channel.PumpPower) >= LeastWatts;
        if (moved is null || !powered)
        {
            return new Outcome("pump", Soundness.Failed, moved is null
                ? $"The pump was told to run and no water moved within {RunSeconds:0} s: shut valve, air, ice, or a pump that does not turn."
                : "Water moved, but the pump took no power: the power probe, or water that moves by itself.");
        }

        double seconds = moved.Seconds - run.BeganSeconds!.Value;
        double flow = Series.Of(Series.Last(run.Since, 30), Channel.Flow).Mean;
        string found = $"The pump moved water within {Wording.Number(seconds)} s, {Wording.Number(flow, 2)} L/min{(Fitted.Has(settings, Channel.PumpPower) ? $", and takes {Wording.Number(Rise(rest, run.Since, Channel.PumpPower))} W" : "")}";
        return new Outcome("pump", still ? Soundness.Sound : Soundness.Doubtful, still ? $"{found}." : $"{found}; but water moved at rest too: a meter that counts noise, or a syphon.")
        {
            Figure = seconds,
            Unit = "s",
            Uncertainty = Uncertain.Expanded(Uncertain.Within(0.5 * Step(run.Since))),
        };
    }

    private static Outcome Valve(Trace trace)
    {
        PhaseTrace shut = trace["valve-shut"];
        double open = shut.Since[0].Of(Channel.Flow) ?? double.NaN;
        double least = Least(shut.Since) ?? double.NaN;
        double lost = 1 - (least / open);
        return lost >= ValveShare
            ? new Outcome("valve", Soundness.Sound, $"The valve took {Wording.Share(lost)} of the flow away as it ran shut.") { Figure = 100 * lost, Unit = "%" }
            : new Outcome("valve", Soundness.Failed, double.IsNaN(lost)
                ? "The flow could not be read while the valve ran shut."
                : $"The valve was told to shut and the flow lost {Wording.Share(Math.Max(0, lost))} of itself: jammed, not wired, or slower than it was told (loop.valveTravel).") { Figure = double.IsNaN(lost) ? null : 100 * lost, Unit = "%" };
    }

    private static Outcome Powered(Actuator actuator, IReadOnlyList<Look> rest, IReadOnlyList<Look> run, Channel channel)
    {
        double watts = Rise(rest, run, channel);
        string name = Procedure.WireName(actuator);
        return watts >= LeastWatts
            ? new Outcome(name, Soundness.Sound, $"The {name} takes {Wording.Number(watts)} W more than at rest.") { Figure = watts, Unit = "W", Uncertainty = Uncertain.Expanded(Series.Of(Series.Last(run, 30), channel).Deviation, Uncertain.Grain(ChannelTable.Of(channel).Quantum)) }
            : new Outcome(name, Soundness.Failed, $"The {name} was told to run and took no power: fuse, relay, wiring, or the power probe.");
    }

    private static Outcome Seen(Actuator actuator, PhaseTrace asked) => asked.Figure == 1
        ? new Outcome(Procedure.WireName(actuator), Soundness.Sound, $"The {Procedure.Name(actuator)} was seen to do what it was told.")
        : new Outcome(Procedure.WireName(actuator), Soundness.Failed, $"The {Procedure.Name(actuator)} was not seen to do what it was told.");

    private static double Rise(IReadOnlyList<Look> rest, IReadOnlyList<Look> run, Channel channel) =>
        Series.Of(Series.Last(run, 30), channel).Mean - Series.Of(Series.Last(rest, 30), channel).Mean is var rise && double.IsFinite(rise) ? rise : 0;

    private static double? Least(IReadOnlyList<Look> looks) => looks.Skip(1).Min(look => look.Of(Channel.Flow));

    private static double Step(IReadOnlyList<Look> looks) => looks.Count < 2 ? 0 : looks[1].Seconds - looks[0].Seconds;
}
