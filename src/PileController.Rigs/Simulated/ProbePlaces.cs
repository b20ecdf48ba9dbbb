namespace PileController.Rigs.Simulated;

/// <summary>The plant as the probes feel it: one that was taken out feels what it was put into.</summary>
internal sealed class ProbePlaces(IPlant plant, PlantFaults faults) : IPlant
{
    /// <inheritdoc/>
    public void Advance(in ActuatorState actuators, double seconds) => plant.Advance(actuators, seconds);

    /// <inheritdoc/>
    public double TrueValue(ProbeFit probe) =>
        faults.Now.TakenOut is { } elsewhere && elsewhere.TryGetValue(probe.Channel, out double celsius) ? celsius : plant.TrueValue(probe);
}
