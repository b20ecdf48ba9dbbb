using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Metering;
using PileController.Control.Readings;
using PileController.Control.Regulation;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;
using PileController.Rigs;
using PileController.Rigs.Simulated;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Tests.Regulation;

/// <summary>The pump's regulator alone in a loop with the simulated rig on a warm plant: grants are handed to it.</summary>
internal sealed class DrawTrial
{
    private static readonly WeatherSeries Weather = Demo.Weather(HoldingBuild.Place(PileSettings.AlderBank));
    private readonly ControlSettings _control;
    private readonly Plant _plant;

    private RegulatorMemory _memory;
    private Outputs _outputs = Outputs.Safe;

    public DrawTrial(ControlSettings control, LoopBuild loop, RigSettings rig)
    {
        PileSettings settings = PileSettings.AlderBank with { Loop = loop };
        _control = control with { Loop = LoopCurving.Of(settings), MovingDuty = PumpDuty.Moving(settings) };
        _plant = new Plant(HoldingBuild.Plant(settings), Weather, WarmStart.Shipped().State.Plant);
        Rig = new SimulatedRig(
            new HoldingPlant(_plant), rig, loop.ValveTravelSeconds, null, control.Drive, control.ValveFeedback);
        PipeLitres = LoopCircuit.Runs(loop, settings.Heap.Coil)
            .Sum(run => 0.25 * Math.PI * run.InnerDiameterM * run.InnerDiameterM * run.LengthM * 1000);
    }

    /// <summary>Water in the pipes, the tank's left out, L.</summary>
    public double PipeLitres { get; }

    public SimulatedRig Rig { get; }

    public int Starts { get; private set; }

    /// <summary>Holds a grant for a while. Tells each tick's metered draw and flow.</summary>
    public List<(double DrawW, double Flow)> Hold(double grantWatts, double seconds, bool urgent = false)
    {
        List<(double, double)> ticks = [];
        for (double t = 0; t < seconds; t += _control.TickSeconds)
        {
            MeteredDraw draw = Read(out bool metered, out long now);
            RegulatorMemory before = Allotment.Worn(_memory, _control.Drive, _control.TickSeconds);
            (double duty, double opening, RegulatorMemory next) = PumpRegulator.Step(
                _control, before, grantWatts, urgent, draw.WaterWatts, draw.FlowLitresPerMinute, metered, _control.TickSeconds, now);
            Outputs outputs = new(duty, opening, 0, false);
            _memory = OutputRule.Remember(next, before, outputs, Control.Modes.Mode.Drawing, now);
            Starts += outputs.PumpDuty > 0 && _outputs.PumpDuty <= 0 ? 1 : 0;
            Live(outputs);
            ticks.Add((draw.WaterWatts, draw.FlowLitresPerMinute));
        }

        return ticks;
    }

    /// <summary>Mean draw of the last ten minutes of a while at fixed outputs, W.</summary>
    public double DrawAt(double duty, double opening, double seconds)
    {
        List<double> ticks = [];
        for (double t = 0; t < seconds; t += _control.TickSeconds)
        {
            ticks.Add(Read(out _, out _).WaterWatts);
            Live(new Outputs(duty, opening, 0, false));
        }

        return ticks.TakeLast((int)(600 / _control.TickSeconds)).Average();
    }

    private MeteredDraw Read(out bool metered, out long now)
    {
        now = _plant.UtcMilliseconds;
        RigReadings readings = Rig.Read(new Instant(now, now, 0));
        metered = readings[Channel.Flow].IsGood;
        return DrawMeter.Of(_control, readings, _outputs);
    }

    private void Live(in Outputs outputs)
    {
        _outputs = outputs;
        Rig.Apply(outputs);
        Rig.Advance(_control.TickSeconds);
    }
}
