using System.Device.Gpio;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;
using PileController.Rigs.Hardware.Loads;
using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Hardware;

/// <summary>
/// The real rig: probes on 1-Wire, I2C and lines (<see cref="RigInputs"/>), and the actuators, each driven as the settings
/// say. Probes wired to nothing are not fitted; what no actuator is fitted for goes nowhere.
/// </summary>
/// <threadsafety>One caller at a time; its own timer runs beside the caller.</threadsafety>
public sealed class GpioRig : IRig
{
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(1);

    private readonly GpioController _controller;
    private readonly TimeProvider _time;
    private readonly Action<string> _report;
    private readonly IReadOnlyList<IInputGroup> _inputs;
    private readonly OutputPorts _ports;
    private readonly SteeredLoads _loads;
    private readonly HeldLine? _lamp;
    private readonly HeldLine? _pulse;
    private readonly ITimer _timer;
    private readonly Lock _held = new();
    private bool _disposed;

    /// <summary>Opens the lines, loads off, and starts the probe buses.</summary>
    /// <param name="controller">The chip's lines (<see cref="GpioChips.Open"/>). The rig owns it and disposes it last.</param>
    /// <param name="settings">What is fitted and where.</param>
    /// <param name="motion">How the motor valve moves, where one is wired.</param>
    /// <param name="time">Clock and timer.</param>
    /// <param name="report">Told in a sentence when a line fails, or when outputs are dropped because the loop is silent.</param>
    /// <exception cref="ArgumentException">A setting no rig can be built from; the message names it.</exception>
    /// <exception cref="RigFaultException">A line cannot be opened.</exception>
    public GpioRig(
        GpioController controller, RigSettings settings, ValveMotion motion, TimeProvider time, Action<string> report)
        : this(controller, settings, motion, time, report, new InputPorts(), OutputPorts.Of(settings.Hardware, () => controller))
    {
    }

    internal GpioRig(
        GpioController controller,
        RigSettings settings,
        ValveMotion motion,
        TimeProvider time,
        Action<string> report,
        InputPorts inputPorts,
        OutputPorts ports)
    {
        ProbeFitCheck.Require(settings.Probes);
        HardwareCheck.Require(settings.Hardware);
        WiringFaults.Require(settings);
        _controller = controller;
        _time = time;
        _report = Unthrown(report);
        _ports = ports;
        try
        {
            IReadOnlyList<Func<ILoad>> fitted = Actuators.Of(settings.Hardware, motion, ports);
            ports.RequireAll();
            _loads = new SteeredLoads(fitted, time, _report);
            _lamp = Held("lamp", settings.Hardware.LampLine, settings.Hardware, settings.Hardware.LampBeats);
            _pulse = Held("watchdog timer", settings.Hardware.PulseLine, settings.Hardware, beats: true);
            _inputs = RigInputs.Open(controller, settings, time, _report, inputPorts);
            _timer = time.CreateTimer(_ => OnBeat(), null, Beat, Beat);
        }
        catch
        {
            RigInputs.Close(_inputs ?? []);
            ports.Dispose();
            throw;
        }
    }

    /// <summary>The lamp, or null when none is fitted.</summary>
    public IHeldLine? Lamp => _lamp;

    /// <summary>The line that feeds the watchdog timer in series with the loads, or null when none is fitted.</summary>
    public IHeldLine? Pulse => _pulse;

    /// <summary>What could not be switched off at the end, a sentence each; empty until it is disposed.</summary>
    public IReadOnlyList<string> LeftOn => _loads.LeftOn;

    /// <inheritdoc/>
    public async ValueTask<RigReadings> ReadAsync(Instant at, CancellationToken cancellation)
    {
        Reading[] readings = new Reading[ChannelTable.Count];
        await Task.WhenAll(_inputs.Select(group => group.ReadAsync(readings, cancellation))).ConfigureAwait(false);
        return new RigReadings(readings);
    }

    /// <summary>Switches the loads, and holds their duty until told otherwise or until the loop falls silent.</summary>
    /// <exception cref="ArgumentException">A value that is not 0 to 1; the outputs stay as they are.</exception>
    /// <exception cref="RigFaultException">A line could not be written now or since the call before; the others were.</exception>
    public ValueTask ApplyAsync(Outputs outputs, CancellationToken cancellation) => Apply(outputs, valveIsHeld: false);

    /// <inheritdoc cref="IRig.ApplyHeldAsync"/>
    /// <exception cref="ArgumentException">As <see cref="ApplyAsync"/>.</exception>
    /// <exception cref="RigFaultException">As <see cref="ApplyAsync"/>.</exception>
    public ValueTask ApplyHeldAsync(Outputs outputs, CancellationToken cancellation) => Apply(outputs, valveIsHeld: true);

    private ValueTask Apply(in Outputs outputs, bool valveIsHeld)
    {
        OutputsCheck.Require(outputs);
        return _loads.Apply(outputs, valveIsHeld) is { } fault ? ValueTask.FromException(fault) : ValueTask.CompletedTask;
    }

    /// <summary>Switches all loads off, then lets the lines go. What cannot be switched off is reported.</summary>
    public async ValueTask DisposeAsync()
    {
        List<string> news = [];
        lock (_held)
        {
            if (_disposed)
            {
                return;
            }

            _disposed = true;
            _lamp?.LetGo(news);
            _pulse?.LetGo(news);
        }

        await _loads.DisposeAsync().ConfigureAwait(false);
        news.ForEach(_report);
        await _timer.DisposeAsync().ConfigureAwait(false);
        RigInputs.Close(_inputs);
        _ports.Dispose();
        _controller.Dispose();
    }

    // It is called on threads of timers and buses, where what it throws would end the process.
    private static Action<string> Unthrown(Action<string> report) => sentence =>
    {
        try
        {
            report(sentence);
        }
        catch (Exception)
        {
            // A sentence is lost; the loads stay steered.
        }
    };

    private HeldLine? Held(string name, int? line, HardwareSettings hardware, bool beats) =>
        line is { } number ? new HeldLine(_controller, name, number, hardware.ActiveLow, beats, _time) : null;

    private void OnBeat()
    {
        _loads.Beat();

        // Not behind the loads: a bus that hangs under one of them must not look like a program that is dead.
        List<string> news = [];
        _held.UnlessBusy(() => BeatHeld_NeedsLock(news));
        news.ForEach(_report);
    }

    private void BeatHeld_NeedsLock(List<string> news)
    {
        if (!_disposed)
        {
            _lamp?.Drive(news);
            _pulse?.Drive(news);
        }
    }
}
