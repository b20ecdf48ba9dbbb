using System.Text.Json.Serialization;
using PileController.Physics;

namespace PileController.Control.Estimation;

/// <summary>
/// What the observer believes: temperatures, what it has learned of the heap and of its probes, and how sure it is of each
/// together with each other. Not changed after it was made; a new one is made at each update.
/// </summary>
public sealed record HeapBelief
{
    /// <summary>How many things of the heap are learned besides its temperatures.</summary>
    public const int Figures = 6;

    /// <summary>How many probes the heap has.</summary>
    public const int Probes = 4;

    /// <summary>Where the logarithms of the learned factors begin: demand, permeability, conductivity, cover, capacity, coil.</summary>
    public const int FirstFigure = HeapShape.Nodes;

    /// <summary>Where the constant errors of the probes begin, K: core, middle, turns, edge.</summary>
    public const int FirstProbe = FirstFigure + Figures;

    /// <summary>How many there are of all.</summary>
    public const int Size = FirstProbe + Probes;

    /// <summary>How many entries the upper triangle of their covariance has.</summary>
    public const int UpperSize = Size * (Size + 1) / 2;

    /// <summary>Means.</summary>
    public double[] Mean { get; init; } = new double[Size];

    /// <summary>Upper triangle of their covariance, row by row.</summary>
    public double[] Upper { get; init; } = new double[UpperSize];

    /// <summary>Square of how far each probe lay off what was foretold, in standard deviations, over about a day; 1 is as it should be.</summary>
    public double[] Surprise { get; init; } = [1, 1, 1, 1];

    /// <summary>The mean of those.</summary>
    [JsonIgnore]
    public double MeanSurprise => 0.25 * (Surprise[0] + Surprise[1] + Surprise[2] + Surprise[3]);

    /// <summary>Heat made less heat lost by itself, over about a day, W.</summary>
    public double NetW { get; init; }

    /// <summary>The heap as told, with what was learned.</summary>
    /// <param name="told">As told.</param>
    public HeapFigures Learned(in HeapFigures told) => Learned(told, Mean);

    internal static HeapFigures Learned(in HeapFigures told, ReadOnlySpan<double> mean) => told with
    {
        DemandWPerM3 = told.DemandWPerM3 * Portable.Exp(mean[FirstFigure]),
        PermeabilityM2 = told.PermeabilityM2 * Portable.Exp(mean[FirstFigure + 1]),
        ConductivityFactor = told.ConductivityFactor * Portable.Exp(mean[FirstFigure + 2]),
        CoverM2KPerW = told.CoverM2KPerW * Portable.Exp(-mean[FirstFigure + 3]),
        JPerM3K = told.JPerM3K * Portable.Exp(mean[FirstFigure + 4]),
        CoilWPerK = told.CoilWPerK * Portable.Exp(mean[FirstFigure + 5]),
    };
}
