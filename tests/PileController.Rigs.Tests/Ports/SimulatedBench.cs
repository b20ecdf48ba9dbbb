using PileController.Control.Readings;
using PileController.Rigs.Faults;
using PileController.Rigs.Simulated;
using PileController.Rigs.Tests.Simulated;

namespace PileController.Rigs.Tests.Ports;

/// <summary>A probe of the simulated rig.</summary>
internal sealed class SimulatedBench(Channel channel) : IPortBench
{
    private readonly FakePlant _plant = new();
    private readonly FaultBoard _faults = new();
    private int _tick;

    public IRig Make() => new SimulatedRig(_plant, new RigSettings { Probes = [new(channel)] }, 10, _faults);

    public async Task SetAsync(IRig rig, double value)
    {
        // Over the slowest probe's lag, two minutes, many times.
        _plant[channel] = value;
        for (int tick = 0; tick < 200; tick++)
        {
            await ReadAsync(rig);
        }
    }

    public async Task<Reading> ReadAsync(IRig rig) => (await rig.ReadAsync(Ticks.At(_tick++), CancellationToken.None))[channel];

    public void Break() => _faults.Add(new Fault(FaultKind.Open, channel));

    public void Dispose()
    {
    }
}
