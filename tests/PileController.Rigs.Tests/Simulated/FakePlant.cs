using PileController.Control.Readings;
using PileController.Rigs.Simulated;

namespace PileController.Rigs.Tests.Simulated;

/// <summary>A far side whose truths a test sets, and which remembers what the actuators did.</summary>
internal sealed class FakePlant : IPlant
{
    private readonly double[] _truth = new double[ChannelTable.Count];

    public List<(ActuatorState Actuators, double Seconds)> Lived { get; } = [];

    public ActuatorState Last => Lived[^1].Actuators;

    public double this[Channel channel]
    {
        get => _truth[(int)channel];
        set => _truth[(int)channel] = value;
    }

    /// <summary>When set, flow and pump power follow the pump instead of the truths that were set.</summary>
    public bool PumpMakesFlow { get; init; }

    public void Advance(in ActuatorState actuators, double seconds)
    {
        Lived.Add((actuators, seconds));
        if (PumpMakesFlow)
        {
            this[Channel.Flow] = 4 * actuators.PumpDuty * actuators.ValveOpening * (1 - actuators.FlowShareLost);
            this[Channel.PumpPower] = 22 * actuators.PumpDuty;
        }
    }

    public double TrueValue(ProbeFit probe) => _truth[(int)probe.Channel];
}
