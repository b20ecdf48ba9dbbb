using System.Collections.Concurrent;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Readings;

namespace PileController.Tests.Support;

/// <summary>
/// A stand-in for control that makes plausible decisions and obeys commands, so that the shell and the page can be
/// tried on their own. It keeps state outside the memory, which control itself never does.
/// </summary>
public sealed class CannedControl
{
    private const long Hour = 3_600_000;

    private readonly List<HandHold> _hands = [];
    private readonly HashSet<string> _latched = [];
    private bool _servicing;

    /// <summary>The interlock to trip at the next tick, or null.</summary>
    public string? Trip { get; set; }

    /// <summary>Ids of the interlocks that act without a trip.</summary>
    public ConcurrentDictionary<string, bool> Acting { get; } = new();

    /// <summary>Commands of every tick, in order.</summary>
    public List<IReadOnlyList<Command>> Seen { get; } = [];

    public (Decision Decision, Memory Memory) Step(
        ControlSettings settings, Memory memory, RigReadings readings, IReadOnlyList<Command> commands, Instant at)
    {
        Seen.Add(commands);
        foreach (Command command in commands)
        {
            Obey(command, at);
        }

        if (Trip is { } id)
        {
            _latched.Add(id);
            Trip = null;
        }

        _hands.RemoveAll(hand => hand.UntilMonotonicMilliseconds <= at.MonotonicMilliseconds || _latched.Count > 0);
        Mode mode = _latched.Count > 0 ? Mode.Tripped : _servicing ? Mode.Servicing : _hands.Count > 0 ? Mode.ByHand : Mode.Drawing;
        Decision decision = Decide(settings, memory, readings, at, mode);
        return (decision, memory with { Sequence = decision.Sequence, Mode = mode, Totals = decision.Totals });
    }

    // The midnight at the place before this moment.
    private static long Midnight(Instant at) => at.UtcMilliseconds - (long)(at.LocalHour * Hour);

    private void Obey(Command command, Instant at)
    {
        switch (command)
        {
            case TakeByHand take:
                _hands.RemoveAll(hand => hand.Actuator == take.Actuator);
                _hands.Add(new HandHold(take.Actuator, take.Value, at.MonotonicMilliseconds + take.Milliseconds, take.Who));
                break;
            case ReleaseHand release:
                _hands.RemoveAll(hand => release.Actuator is null || hand.Actuator == release.Actuator);
                break;
            case ClearTrip clear:
                _latched.Remove(clear.Interlock);
                break;
            case SetServicing servicing:
                _servicing = servicing.On;
                break;
        }
    }

    private Decision Decide(ControlSettings settings, Memory memory, RigReadings readings, Instant at, Mode mode)
    {
        double Of(string series) => MadeUp.Value(series, at.UtcMilliseconds);
        bool off = mode is Mode.Tripped or Mode.Servicing;
        double Held(Actuator actuator, double otherwise) => _hands.FirstOrDefault(hand => hand.Actuator == actuator)?.Value ?? otherwise;
        bool Acts(params InterlockAction[] actions) => MadeUp.Interlocks.Any(row => actions.Contains(row.Action) && Acting.ContainsKey(row.Id));
        bool noWater = Acts(InterlockAction.HoldWater, InterlockAction.HoldAll);
        bool noAir = Acts(InterlockAction.HoldAir, InterlockAction.HoldAll);
        double guard = Acts(InterlockAction.GuardFrost) ? 0.4 : 0;
        double pump = Math.Max(noWater ? 0 : Held(Actuator.Pump, Of("pumpDuty")), guard);
        bool whole = readings[Channel.HeapCore].IsGood || !readings[Channel.House].IsGood;
        return new Decision
        {
            Sequence = memory.Sequence + 1,
            At = at,
            Readings = readings,
            Estimate = new HeapEstimate(Of("heapCore"), Of("activeZone"), Of("heapTurns"), 0.4, 1650, 3.1e8, -0.3, true, true),
            Mode = mode,
            ModeBefore = memory.Mode,
            ModeSinceMonotonicMilliseconds = at.MonotonicMilliseconds - 5_400_000,
            Kinds = DecisionKinds.Steady,
            WantWatts = Of("want"),
            MeansWatts = Of("means"),
            GrantWatts = off ? 0 : Of("grant"),
            WaterGrantWatts = off ? 0 : Of("waterDraw"),
            AirGrantWatts = off ? 0 : Of("airDraw"),
            Curb = off ? Curb.Interlock : Curb.Means,
            HouseSetPointCelsius = settings.HouseNightC,
            Draw = new MeteredDraw(off ? 0 : Of("waterDraw"), 90, off ? 0 : Of("airDraw"), off ? 0 : Of("flow"), false),
            Totals = new Totals(8.1e8, 2.2e7, 1.3e8, 1.1e7, 6.2e6, 41_200),
            Verdicts = [.. MadeUp.Interlocks.Select(row => _latched.Contains(row.Id) ? Verdict.Latched : Acting.ContainsKey(row.Id) ? Verdict.Acting : Verdict.Clear)],
            FirstActing = -1,
            Hands = [.. _hands],
            Outputs = off ? Outputs.Safe : new Outputs(
                pump, Math.Max(noWater ? 0 : Held(Actuator.Valve, 0.8), guard), noAir ? 0 : Held(Actuator.Blower, Of("blowerDuty")),
                Held(Actuator.Backup, 0) > 0.5 && !Acting.ContainsKey("houseHot")),
            Tonight = new Tonight(
                2.1, 4.6, 6.3, Midnight(at) + (6 * Hour), 0.62, 900, Midnight(at) + Hour, Midnight(at) + (9 * Hour), at.UtcMilliseconds, 1.4, 1,
                1.9, false),
            Note = whole ? null : "Heap core does not answer; the estimate goes on with the other probes.",
        };
    }
}
