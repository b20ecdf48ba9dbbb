namespace PileController.Control.Estimation;

/// <summary>What the observer's heap reckons with: its shape and what is told, and how far both are off as learned.</summary>
/// <param name="Shape">How the heap is cut.</param>
/// <param name="JPerM3K">Heat capacity of the bed as it was built, J/(m³·K).</param>
/// <param name="DemandWPerM3">Heat the microbes would make at their best temperature with plenty of air, W/m³.</param>
/// <param name="PermeabilityM2">Permeability of the bed to air, m².</param>
/// <param name="ConductivityFactor">Conductivity of the bed, as a multiple of what chips usually have.</param>
/// <param name="CoverM2KPerW">Resistance of the cover on top and side, m²·K/W; the air's film comes on top of it.</param>
/// <param name="CoilWPerK">Conductance from the bed at the turns to the water at 40 °C, W/K.</param>
/// <param name="DemandSlope">
/// How much more than the mean the outer face demands than the axis would, as a share: well aired stuff is used up sooner.
/// </param>
/// <param name="InferredFlowFactor">What a flow that no meter tells is to be multiplied by.</param>
public readonly record struct HeapFigures(
    HeapShape Shape, double JPerM3K, double DemandWPerM3, double PermeabilityM2, double ConductivityFactor,
    double CoverM2KPerW, double CoilWPerK, double DemandSlope = 0,
    double InferredFlowFactor = 1)
{
    // A bed that has dried and burnt out keeps at least so much of its heat capacity: the solids nothing eats.
    private const double LeastShare = 0.2;

    // A heap some weeks old (common practice, no source).
    private const double UsualDemandWPerM3 = 110;

    // Settled chips (common practice, no source).
    private const double UsualPermeabilityM2 = 1e-9;

    // A hand and a half of loose dry cover at 0.08 W/(m·K) (published class 0.03 to 0.30, Ahn et al. 2009).
    private const double UsualCoverM2KPerW = 0.15 / 0.08;

    /// <summary>
    /// Heat capacity each node has lost since it was built, J/(m³·K), <see cref="HeapShape.Nodes"/> of them; null for a fresh
    /// heap. Not learned: the model's own draught has dried it and its own microbes have burnt it.
    /// </summary>
    public double[]? SpentJPerM3K { get; init; }

    /// <summary>Heat capacity of a node's bed as it is now, J/(m³·K).</summary>
    /// <param name="node">One of the rings, or the sleeve.</param>
    public double JPerM3KOf(int node) =>
        SpentJPerM3K is null ? JPerM3K : Math.Max(LeastShare * JPerM3K, JPerM3K - SpentJPerM3K[node]);

    /// <summary>What is told of a heap, before anything is learned.</summary>
    /// <param name="settings">What the controller is told.</param>
    /// <param name="shape">The heap as cut from the same settings.</param>
    public static HeapFigures Told(ControlSettings settings, HeapShape shape)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(shape);
        return new(
            shape, settings.HeapHeatCapacityJPerK / shape.BedM3, UsualDemandWPerM3, UsualPermeabilityM2, 1, UsualCoverM2KPerW,
            Math.Max(0.1, settings.CoilWPerK));
    }
}

/// <summary>What bears on the heap during a step.</summary>
/// <param name="CoilWatts">Heat the coil's water takes, W.</param>
/// <param name="DrumWatts">Heat the water takes in the drum, W.</param>
/// <param name="DuctWatts">Heat the air of the ducts takes, W.</param>
/// <param name="OutsideC">Air outside, °C.</param>
/// <param name="GroundC">Deep ground, °C.</param>
/// <param name="BlownM3PerS">Air drawn through the heap itself, m³/s of outside air.</param>
public readonly record struct HeapLoad(
    double CoilWatts, double DrumWatts, double DuctWatts, double OutsideC, double GroundC, double BlownM3PerS = 0);

/// <summary>Water that runs through coil and drum, in that order.</summary>
/// <param name="WPerK">Flow × heat capacity, W/K; 0 at rest.</param>
/// <param name="ReturnC">As it comes in, °C.</param>
public readonly record struct HeapFlow(double WPerK, double ReturnC);

/// <summary>What became of a step.</summary>
/// <param name="CoilWatts">Heat taken by the coil's water, W.</param>
/// <param name="DrumWatts">Heat taken from the drum, W.</param>
/// <param name="NetWatts">Heat made less heat lost by itself, W.</param>
public readonly record struct HeapStep(double CoilWatts, double DrumWatts, double NetWatts)
{
    /// <summary>Heat the water took, W.</summary>
    public double WaterWatts => CoilWatts + DrumWatts;
}
