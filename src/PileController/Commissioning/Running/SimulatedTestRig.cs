using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Physics.Sky.Weather;
using PileController.Rigs.Faults;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Commissioning.Running;

/// <summary>The simulated holding at noon of the day its heap was built, living as fast as it goes.</summary>
internal sealed class SimulatedTestRig : ITestRig
{
    private const long NoonMilliseconds = 12 * 3_600_000L;

    private readonly double _tickSeconds;

    /// <summary>Builds it.</summary>
    public SimulatedTestRig(PileSettings settings)
    {
        WeatherSeries weather = Demo.Weather(HoldingBuild.Place(settings));
        int offset = HoldingBuild.StandardOffsetMinutes(settings);
        long start = new DateTimeOffset(Demo.Built.ToDateTime(TimeOnly.MinValue), TimeSpan.FromMinutes(offset)).ToUnixTimeMilliseconds() + NoonMilliseconds;
        Holding = new Holding(HoldingBuild.Plant(settings), settings.Control, settings.Rig, weather, offset, start);
        _tickSeconds = settings.Control.TickSeconds;
    }

    /// <inheritdoc/>
    public bool Simulated => true;

    /// <inheritdoc/>
    public long UtcMilliseconds => Holding.Now.UtcMilliseconds;

    /// <summary>The holding, of which a simulated grower knows the truth.</summary>
    public Holding Holding { get; }

    /// <summary>Water that truly went through the loop since the start, L.</summary>
    public double TrueLitres { get; private set; }

    /// <summary>Where the valve stood before the last tick and stands after it, 0 to 1.</summary>
    public (double Before, double After) Valve { get; private set; }

    /// <summary>Puts a probe into something else.</summary>
    public void TakeOut(Channel channel, double celsius) => Holding.Rig.Faults.Add(new Fault(FaultKind.TakenOut, channel, celsius));

    /// <inheritdoc/>
    public ValueTask<Look> TickAsync(IReadOnlyList<Command> commands, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        double before = Holding.Rig.ValvePosition;
        RigReadings readings = Holding.Read();
        Decision decision = Holding.Tick(readings, commands);
        TrueLitres += Holding.Plant.FlowLitresPerMinute * _tickSeconds / 60;
        Valve = (before, Holding.Rig.ValvePosition);
        return ValueTask.FromResult(Look.Of(decision, readings));
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => Holding.Rig.DisposeAsync();
}
