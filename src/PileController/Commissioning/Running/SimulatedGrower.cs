using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;
using PileController.Settings;

namespace PileController.Commissioning.Running;

/// <summary>Does on the simulated rig what a grower does on a real one, and sees the truth a bucket or a pointer would show.</summary>
/// <param name="rig">The rig.</param>
/// <param name="settings">Its settings.</param>
/// <param name="baths">The probes taken into the bath of the test, or into the hand.</param>
/// <param name="say">Where the dialogue goes.</param>
internal sealed class SimulatedGrower(SimulatedTestRig rig, PileSettings settings, IReadOnlyList<Channel> baths, Action<string> say) : IGrower
{
    private const double IceCelsius = 0;
    private const double RoomCelsius = 20;
    private const double HandCelsius = 33;

    private readonly PumpCurve _pump = LoopCircuit.Pump(settings.Loop);
    private Phase? _at;
    private double _litresWhenEmpty;
    private double _fastest;

    /// <inheritdoc/>
    public void Hear(string line) => say(line);

    /// <inheritdoc/>
    public Reply? Reply(Walk walk)
    {
        Phase phase = walk.Phase!;
        if (!ReferenceEquals(phase, _at))
        {
            _at = phase;
            _fastest = 0;
            Arrive(walk.Procedure.Id, phase.Id);
        }

        if (!walk.AwaitsAnswer)
        {
            return null;
        }

        double seconds = walk.Traces[^1].Looks[^1].Seconds;
        if (walk.Procedure.Id == "travel")
        {
            return Arrived(seconds, phase.Moves.Single(move => move.Actuator == Actuator.Valve).Value) is { } when ? new Reply(when, null, null) : null;
        }

        (double? figure, string? text) = Figure(phase);
        if (phase.Question is { } question)
        {
            say($"     {question.Text}");
            say($"     > {text ?? (question.Kind == AnswerKind.YesNo ? "yes" : Wording.Number(figure!.Value, 2))}");
        }

        return new Reply(seconds, figure, text);
    }

    private void Arrive(string test, string phase)
    {
        if (phase.StartsWith("empty-", StringComparison.Ordinal))
        {
            _litresWhenEmpty = rig.TrueLitres;
        }

        double? celsius = (test, phase) switch
        {
            ("find", "hand") => HandCelsius,
            ("ice", "ready") => IceCelsius,
            ("pair", "ready") => RoomCelsius,
            _ => null,
        };
        foreach (Channel channel in celsius is null ? [] : baths)
        {
            rig.TakeOut(channel, celsius!.Value);
        }
    }

    // The tick before is over; the pointer stood still somewhere within it.
    private double? Arrived(double lookSeconds, double opening)
    {
        (double before, double after) = rig.Valve;
        double tick = settings.Control.TickSeconds;
        if (Math.Abs(after - opening) > 1e-9)
        {
            _fastest = Math.Abs(after - before) / tick;
            return null;
        }

        return lookSeconds + (_fastest > 0 ? Math.Min(tick, Math.Abs(opening - before) / _fastest) : 0);
    }

    private (double? Figure, string? Text) Figure(Phase phase) => (phase.Question?.Kind, phase.Id.Split('-')[0]) switch
    {
        (null, _) => (null, null),
        (AnswerKind.YesNo, _) => (1, null),
        (AnswerKind.Text, _) => (null, "A simulated season."),
        (_, "read") => (Math.Round(rig.TrueLitres - _litresWhenEmpty, 1), null),
        (_, "head") => (Math.Round(_pump.HeadM(rig.Holding.Plant.FlowLitresPerMinute, rig.Holding.Rig.Outputs.PumpDuty), 2), null),
        (_, "flow") => (rig.Holding.Plant.FlowLitresPerMinute, null),
        (_, "power") => (rig.Holding.Plant.PumpW, null),
        (_, "weight") => (5200, null),
        _ => (phase.Question!.Least, null),
    };
}
