using PileController.Control.Allocation;
using PileController.Control.Decisions;
using PileController.Control.Estimation;
using PileController.Control.Foresight;
using PileController.Control.Interlocks;
using PileController.Control.Means;
using PileController.Control.Metering;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Control.Regulation;

namespace PileController.Control;

/// <summary>The controller: one pure step.</summary>
public static class Controller
{
    private const double MostTickSeconds = 120;
    // A cold night's difference (common practice, no source).
    private const double UnseenKelvin = 8;
    private const long TellCurbMilliseconds = 15 * 60_000;

    // A probe that flickers gets a line now and then, not one a flicker.
    private const long TellProbesMilliseconds = 5 * 60_000;

    /// <summary>
    /// Decides one tick. A pure function of its arguments: no clock, no input or output, no randomness; the same
    /// arguments give the same bits.
    /// </summary>
    /// <param name="settings">What the controller is told about the place.</param>
    /// <param name="memory">What the tick before handed on.</param>
    /// <param name="readings">What the rig said.</param>
    /// <param name="commands">What people and the shell asked for since the tick before, in order.</param>
    /// <param name="at">The moment of this tick.</param>
    public static (Decision Decision, Memory Memory) Step(
        ControlSettings settings, Memory memory, RigReadings readings, IReadOnlyList<Command> commands, Instant at)
    {
        long now = at.MonotonicMilliseconds;
        bool first = memory.LastMonotonicMilliseconds < 0;
        double seconds = first ? 0 : Math.Clamp((now - memory.LastMonotonicMilliseconds) * 0.001, 0, MostTickSeconds);
        (RigReadings sound, ProbeMemories probes) = Validation.Check(readings, memory.Channels, now);
        MeteredDraw draw = DrawMeter.Of(settings, sound, memory.Outputs);
        Totals totals = Totaliser.Add(memory.Totals, settings, draw, sound, memory.Outputs, seconds);
        (HeapEstimate estimate, EstimatorMemory estimator) = Estimator.Step(
            settings, memory.Estimator, sound, draw, memory.Outputs.BlowerDuty, seconds, at);
        (Forecast? forecast, string? refused) = ForecastRule.Of(memory.Forecast, commands, at);
        WeatherMemory weather = WeatherMemory.Step(
            settings, memory.Weather, estimator.OutsideC, sound.TryGet(Channel.Outside, out _), forecast, seconds, at);
        HouseMemory dwelling = HouseMemory.Step(
            settings, memory.House, sound, draw, memory.Outputs.BackupOn, estimator.OutsideC, forecast, seconds, at);

        HandRule.Result asked = HandRule.Apply(memory.Hands, memory.Interlocks, memory.Servicing, commands, now);
        asked = refused is null ? asked : asked.With(DecisionKinds.Warning, refused);
        Span<double> signals = stackalloc double[Signals.Count];
        Signals.Fill(signals, settings, sound, memory.Outputs, estimate.ActiveZoneCelsius, asked.Report);
        (Verdict[] verdicts, InterlockMemory[] interlocks, InterlockRule.Effect effect) =
            InterlockRule.Judge(
                settings, signals, asked.Interlocks, memory.Standing.Verdicts,
                new Moments(now, first ? now : memory.LastMonotonicMilliseconds, memory.Regulators.PumpSinceMilliseconds, memory.Outputs.ValveOpening <= 0));
        if (effect.Tripped && asked.Hands.Length > 0)
        {
            asked = HandRule.EndedByTrip(asked);
        }

        // Without a house probe the house is taken to stand at its minimum: the want is reckoned from the air outside.
        bool houseKnown = sound.TryGet(Channel.House, out double houseC);
        double house = houseKnown ? houseC : settings.HouseMinimumC;
        // Without an outside probe it is taken to be so much colder than the house: what was read last may be days old.
        double outside = sound.TryGet(Channel.Outside, out double outsideC) ? outsideC : Math.Min(estimator.OutsideC, house - UnseenKelvin);
        GuardNeed guard = GuardRule.Step(settings, memory.Guard, weather, dwelling, forecast, at);
        (Course course, long lookedAt) =
            HorizonRule.Step(settings, memory, estimate, estimator, weather, dwelling, forecast, guard.Joules, at);
        BatteryLeave battery = BatteryRule.Of(settings, sound);
        Reach reach = Reach.Of(settings, sound, estimate, house, memory.Regulators, battery.Briskness);
        Grant grant = settings.Policy == DrawPolicy.Means
            ? MeansPolicy.Decide(
                settings, estimate, estimator.LeastZoneC, reach, house, outside, at, course, battery,
                SeasonReserve.Kelvin(settings, at, weather.Learned.WeeksC), guard.Joules)
            : BaselinePolicy.Decide(settings, memory.Regulators, sound, estimate, reach, house, at.LocalHour);
        grant = Withhold(grant, effect);
        NightDraw night = new(
            course.Comfort ? grant.TotalW : 0, estimate.Lit && !effect.Tripped ? Math.Max(0, grant.MeansW) : 0,
            estimate.Lit && !effect.Tripped ? estimate.GenerationWatts : 0, reach.WaterW, reach.AirW, course.CloserKelvin);
        (TonightMemory tonight, bool tellTonight) = TonightMemory.Step(
            settings, memory.Tonight, dwelling, weather, forecast, night, houseKnown ? houseC : null,
            memory.Outputs.BackupOn, at);

        (Outputs wish, RegulatorMemory regulators) = Regulate(settings, memory, grant, draw, sound, seconds, now);
        // Only a running pump proves flow: a meter that counts noise, or a syphon, does not.
        bool flows = memory.Outputs.PumpDuty > 0
            && (!sound.TryGet(Channel.Flow, out double flow) || flow >= settings.Limits.NoFlowLitresPerMinute);
        long flowSince = !flows ? -1 : memory.FlowSinceMonotonicMilliseconds >= 0 ? memory.FlowSinceMonotonicMilliseconds : now;
        bool proven = flowSince >= 0 && now - flowSince >= settings.PrimeSeconds * 1000;
        Trigger trigger = ModeRule.Trigger(
            memory.Mode, new ModeRule.Facts(
                effect.Tripped, asked.Servicing, ModeRule.HeldByHand(asked.Hands), effect.GuardFrost, grant.FloorNear && estimate.Lit,
                grant.Recovered, wish.PumpDuty > 0, wish.BlowerDuty > 0, memory.Outputs.PumpDuty > 0, proven));
        Mode mode = ModeTable.After(memory.Mode, trigger);
        bool backup = BackupRule.Of(
            settings, mode, grant, houseKnown ? houseC : null, outside, asked.Hands, effect, memory.Outputs.BackupOn);
        Outputs outputs = OutputRule.Of(settings, mode, asked.Servicing, wish, asked.Hands, effect, backup, memory.Outputs, Rested(memory, now));
        regulators = OutputRule.Remember(regulators, memory.Regulators, outputs, mode, now);

        Curb curb = CurbRule.Of(mode, grant, outputs, effect);
        DecisionKinds kinds = asked.Kinds | Kinds(memory, mode, verdicts, first);
        long doubted = Doubted(sound);
        bool tellProbes = doubted != memory.ToldDoubtedProbes && !first
            && now - memory.ToldProbesAtMonotonicMilliseconds >= TellProbesMilliseconds;
        kinds |= tellProbes ? DecisionKinds.Probe : DecisionKinds.Steady;
        bool tell = curb != memory.ToldCurb && now - memory.ToldCurbAtMonotonicMilliseconds >= TellCurbMilliseconds;
        kinds |= tell ? DecisionKinds.Curb : DecisionKinds.Steady;
        kinds |= tellTonight ? DecisionKinds.Tonight : DecisionKinds.Steady;
        long modeSince = mode == memory.Mode && !first ? memory.ModeSinceMonotonicMilliseconds : now;

        Decision decision = new()
        {
            Sequence = memory.Sequence + 1,
            At = at,
            Readings = sound,
            Estimate = estimate,
            Mode = mode,
            ModeBefore = memory.Mode,
            ModeSinceMonotonicMilliseconds = modeSince,
            Kinds = kinds,
            WantWatts = grant.WantW,
            MeansWatts = grant.MeansW,
            GrantWatts = grant.TotalW,
            WaterGrantWatts = grant.WaterW,
            AirGrantWatts = grant.AirW,
            Curb = curb,
            HeapFloorCelsius = settings.HeapFloorC,
            HouseSetPointCelsius = grant.SetPointC,
            Draw = draw,
            Totals = totals,
            Verdicts = verdicts,
            FirstActing = effect.First,
            Hands = asked.Hands,
            Outputs = outputs,
            Note = asked.Note,
            Tonight = tonight.Latest,
        };
        Memory next = memory with
        {
            Sequence = decision.Sequence,
            LastMonotonicMilliseconds = now,
            Totals = totals,
            Channels = probes,
            Estimator = estimator,
            House = dwelling,
            Weather = weather,
            Regulators = regulators,
            Standing = new Standing
            {
                Mode = mode,
                ModeSinceMonotonicMilliseconds = modeSince,
                Forecast = forecast,
                Course = course,
                LookedAtMonotonicMilliseconds = lookedAt,
                Guard = guard,
                Tonight = tonight,
                Interlocks = interlocks,
                Verdicts = verdicts,
                Hands = asked.Hands,
                Servicing = asked.Servicing,
                FlowSinceMonotonicMilliseconds = flowSince,
                ToldDoubtedProbes = tellProbes || first ? doubted : memory.ToldDoubtedProbes,
                ToldProbesAtMonotonicMilliseconds = tellProbes ? now : memory.ToldProbesAtMonotonicMilliseconds,
                ToldCurb = tell ? curb : memory.ToldCurb,
                ToldCurbAtMonotonicMilliseconds = tell ? now : memory.ToldCurbAtMonotonicMilliseconds,
                Outputs = outputs,
            },
        };
        return (decision, next);
    }

    private static Grant Withhold(in Grant grant, in InterlockRule.Effect effect)
    {
        double water = effect.HoldWater || effect.Tripped ? 0 : grant.WaterW;
        double air = effect.HoldAir || effect.Tripped ? 0 : grant.AirW;
        return grant with { WaterW = water, AirW = air };
    }

    private static (Outputs Wish, RegulatorMemory Memory) Regulate(
        ControlSettings settings, Memory memory, in Grant grant, in MeteredDraw draw, RigReadings sound, double seconds,
        long now)
    {
        RegulatorMemory worn = Allotment.Worn(memory.Regulators, settings.Drive, seconds);
        if (grant.OnOff)
        {
            RegulatorMemory kept = worn with { ThermostatOn = grant.ThermostatOn, CutOut = grant.CutOut };
            return (new Outputs(grant.WaterW > 0 ? 1 : 0, grant.WaterW > 0 ? 1 : 0, 0, false), kept);
        }

        // A least run time keeps a draw going, but what the frost guard or a person set running is no draw: it begins anew.
        RegulatorMemory before = memory.Mode is Mode.Priming or Mode.Drawing
            ? worn
            : worn with { PumpDuty = 0, BlowerDuty = 0 };
        (double pump, double valve, RegulatorMemory next) = PumpRegulator.Step(
            settings, before, grant.WaterW, grant.Urgent, draw.WaterWatts, draw.FlowLitresPerMinute, sound[Channel.Flow].IsGood,
            seconds, now);
        (double blower, next) = BlowerRegulator.Step(
            settings, next, grant.AirW, grant.AirReachW, grant.Urgent, draw.AirWatts, seconds, now);
        return (new Outputs(pump, valve, blower, false), next);
    }

    private static double Rested(Memory memory, long now) =>
        memory.Outputs.PumpDuty > 0 ? 0 : (now - memory.Regulators.PumpSinceMilliseconds) * 0.001;

    private static DecisionKinds Kinds(Memory memory, Mode mode, Verdict[] verdicts, bool first)
    {
        DecisionKinds kinds = first ? DecisionKinds.Start : DecisionKinds.Steady;
        kinds |= mode != memory.Mode ? DecisionKinds.Mode : DecisionKinds.Steady;
        for (int i = 0; i < verdicts.Length; i++)
        {
            bool acts = verdicts[i] is Verdict.Acting or Verdict.Latched;
            InterlockMemory before = InterlockMemory.Of(memory.Interlocks, i);
            bool acted = before.Acting || before.Latched;
            if (acts != acted)
            {
                kinds |= InterlockTable.All[i].Action == InterlockAction.Trip && acts ? DecisionKinds.Trip : DecisionKinds.Warning;
            }
        }

        return kinds;
    }

    // One bit a channel whose probe is fitted and not believed.
    private static long Doubted(RigReadings readings)
    {
        ReadOnlySpan<Reading> each = readings.AsSpan();
        long doubted = 0;
        for (int i = 0; i < each.Length; i++)
        {
            doubted |= each[i].Quality is ReadingQuality.Good or ReadingQuality.NotFitted ? 0 : 1L << i;
        }

        return doubted;
    }
}
