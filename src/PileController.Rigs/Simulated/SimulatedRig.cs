using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Control.Regulation;
using PileController.Rigs.Faults;

namespace PileController.Rigs.Simulated;

/// <summary>
/// Probes and actuators over a plant. Two ways in: <see cref="Read"/>, <see cref="Apply"/>, <see cref="Advance"/>
/// for a run as fast as it goes, and <see cref="IRig"/> for the tick loop, where reading first lets the plant live
/// the time since the last reading. Both give the same bits.
/// </summary>
/// <threadsafety>One caller at a time; only the fault board may be touched from other threads.</threadsafety>
public sealed class SimulatedRig : IRig
{
    // The longest step the plant is given at once by the tick loop, s: the longest tick the settings allow.
    private const double LongestStepSeconds = 60;

    // How far a motor valve's two directions differ from the time told for it (common practice, no source).
    private const double ValveStray = 0.02;

    private readonly ProbePlaces _plant;
    private readonly ProbeBank _bank;
    private readonly ProbeFit? _flowFit;
    private readonly FlowMeter _meter;
    private readonly TravellingValve _valve;
    private readonly PumpDrive _drive;
    private readonly PlantFaults _plantFaults;
    private readonly ReadingFaults _readingFaults;
    private Outputs _outputs = Outputs.Safe;
    private long _tick;
    private long? _lastReadMilliseconds;

    /// <summary>Makes a rig whose probes have settled and whose actuators are off and shut.</summary>
    /// <param name="plant">What is on the far side.</param>
    /// <param name="settings">What is fitted, the flow meter, the seed.</param>
    /// <param name="valveTravelSeconds">From shut to open, s; 0 when there is no valve (the pipe is then open).</param>
    /// <param name="faults">
    /// Where faults are put in. This rig acts out all kinds by itself: do not wrap it in a <see cref="FaultyRig"/>.
    /// Null: a board of its own with the faults of <paramref name="settings"/>.
    /// </param>
    /// <param name="drive">How the pump is switched: a relay gives full duty or none.</param>
    /// <param name="feedback">What the valve tells of where it stands.</param>
    /// <exception cref="ArgumentException">A setting no rig can be built from; the message names it.</exception>
    public SimulatedRig(
        IPlant plant, RigSettings settings, double valveTravelSeconds, FaultBoard? faults = null, PumpDrive drive = PumpDrive.Duty,
        ValveFeedback feedback = ValveFeedback.EndSwitches)
    {
        ProbeFitCheck.Require(settings.Probes);
        Faults = faults ?? new FaultBoard(settings.Faults);
        _plantFaults = new PlantFaults(Faults);
        _plant = new ProbePlaces(plant, _plantFaults);
        _drive = drive;
        _valve = new TravellingValve(valveTravelSeconds, feedback, ValveStray);
        _flowFit = settings.Probes.FirstOrDefault(probe => probe.Channel == Channel.Flow);
        _meter = new FlowMeter(
            settings.PulsesPerLitre, ProbeErrors.GainOf(Channel.Flow, unchecked((ulong)settings.Seed)));
        _bank = new ProbeBank(settings.Probes, settings.Seed, plant);
        _readingFaults = new ReadingFaults(Faults);
    }

    /// <summary>The faults now put in.</summary>
    public FaultBoard Faults { get; }

    /// <summary>What the actuators were last told.</summary>
    public Outputs Outputs => _outputs;

    /// <summary>Where the valve stands, 0 (shut) to 1 (open).</summary>
    public double ValvePosition => _valve.Position;

    /// <summary>What the probes say now. Reading again without advancing gives the same readings.</summary>
    /// <param name="at">The moment of the tick; faults that grow with time go by its monotonic clock.</param>
    public RigReadings Read(Instant at)
    {
        Reading[] readings = new Reading[ChannelTable.Count];
        _bank.Fill(readings, _tick);
        if (_flowFit is not null)
        {
            readings[(int)Channel.Flow] = _meter.Look();
        }

        return _readingFaults.Distort(new RigReadings(readings), at);
    }

    /// <summary>Tells the actuators what to do from now on.</summary>
    /// <exception cref="ArgumentException">A value that is not 0 to 1; the message names it.</exception>
    public void Apply(Outputs outputs)
    {
        OutputsCheck.Require(outputs);
        _outputs = outputs;
    }

    /// <summary>Lets actuators, plant and probes live for a while.</summary>
    /// <param name="seconds">How long, s (above 0).</param>
    /// <exception cref="ArgumentException">No time, or not a number.</exception>
    public void Advance(double seconds)
    {
        if (!(seconds > 0) || double.IsInfinity(seconds))
        {
            throw new ArgumentException($"Seconds is {seconds}; allowed is a number above 0.", nameof(seconds));
        }

        PlantFault fault = _plantFaults.Now;
        double opening = fault.ValveJammed ? _valve.Position : _valve.Travel(_outputs.ValveOpening, seconds);
        double told = _drive == PumpDrive.OnOff && _outputs.PumpDuty > 0 ? 1 : _outputs.PumpDuty;
        double pump = fault.PumpDead ? 0 : told;
        _plant.Advance(
            new ActuatorState(pump, opening, _outputs.BlowerDuty, _outputs.BackupOn, fault.FlowShareLost), seconds);
        _tick++;
        _bank.Follow(_plant, seconds);
        if (_flowFit is not null)
        {
            _meter.Count(_plant.TrueValue(_flowFit) * seconds / 60, seconds);
        }
    }

    /// <summary>Everything this rig carries from tick to tick.</summary>
    public SimulatedRigState Export() => new()
    {
        Tick = _tick,
        Outputs = _outputs,
        ValvePosition = _valve.Position,
        ValveBelieved = _valve.Believed,
        ValveSinceHomedSeconds = _valve.SinceHomedSeconds,
        Meter = _meter.Window,
        Probes = _bank.Export(),
    };

    /// <summary>Takes up where <see cref="Export"/> left off. The first reading by the tick loop then lets no time pass.</summary>
    /// <exception cref="ArgumentException">The state is of other probes than are fitted, or out of range.</exception>
    public void Restore(SimulatedRigState state)
    {
        OutputsCheck.Require(state.Outputs);
        OutputsCheck.Require(new Outputs(0, state.ValvePosition, 0, false));
        _bank.Restore(state.Probes);
        _tick = state.Tick;
        _outputs = state.Outputs;
        _valve.Position = state.ValvePosition;
        _valve.Believed = state.ValveBelieved ?? state.ValvePosition;
        _valve.SinceHomedSeconds = state.ValveSinceHomedSeconds;
        _meter.Window = state.Meter;
        _lastReadMilliseconds = null;
    }

    /// <inheritdoc/>
    public ValueTask<RigReadings> ReadAsync(Instant at, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        double seconds = (at.MonotonicMilliseconds - (_lastReadMilliseconds ?? at.MonotonicMilliseconds)) / 1000.0;
        for (; seconds > LongestStepSeconds; seconds -= LongestStepSeconds)
        {
            Advance(LongestStepSeconds);
        }

        if (seconds > 0)
        {
            Advance(seconds);
        }

        _lastReadMilliseconds = at.MonotonicMilliseconds;
        return ValueTask.FromResult(Read(at));
    }

    /// <inheritdoc/>
    public ValueTask ApplyAsync(Outputs outputs, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        Apply(outputs);
        return ValueTask.CompletedTask;
    }

    /// <summary>Leaves the actuators off and shut.</summary>
    public ValueTask DisposeAsync()
    {
        _outputs = Outputs.Safe;
        return ValueTask.CompletedTask;
    }
}
