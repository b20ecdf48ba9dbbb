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
    public const int Figures = 8;

    /// <summary>How many probes the heap has.</summary>
    public const int Probes = 4;

    /// <summary>
    /// Where what is learned of the heap begins: logarithms of demand, permeability, conductivity, cover, capacity, coil; slope
    /// of the demand; logarithm of how far a flow that is inferred is off.
    /// </summary>
    public const int FirstFigure = HeapShape.Nodes;

    /// <summary>Where the constant errors of the probes begin, K: core, middle, turns, edge.</summary>
    public const int FirstProbe = FirstFigure + Figures;

    /// <summary>Where the distances by which the probes lie further out than told begin, m, in the same order.</summary>
    public const int FirstPlace = FirstProbe + Probes;

    /// <summary>How many there are of all.</summary>
    public const int Size = FirstPlace + Probes;

    /// <summary>How many entries the upper triangle of their covariance has.</summary>
    public const int UpperSize = Size * (Size + 1) / 2;

    // A probe that surprises more than this on the mean of a day is not borne out by the others and the draw; a sound one stays
    // below 0.3 in seasons of the simulated heap.
    private const double MostSurprise = 0.6;

    // Twice what a sound thermometer may err by at most (SEN-020, DS18B20 data sheet rev 042208), less a little, K.
    private const double MostErrorK = 0.8;

    /// <summary>Means.</summary>
    public double[] Mean { get; init; } = new double[Size];

    /// <summary>Upper triangle of their covariance, row by row.</summary>
    public double[] Upper { get; init; } = new double[UpperSize];

    /// <summary>What drying and burning have taken of each node's heat capacity since the heap was built, J/(m³·K).</summary>
    public double[] SpentJPerM3K { get; init; } = new double[HeapShape.Nodes];

    /// <summary>
    /// Square of how far each probe lay off what was foretold, in variances, over about a day; what the model lacks is in the
    /// variances, so it is far below 1 as long as a probe is sound.
    /// </summary>
    public double[] Surprise { get; init; } = new double[Probes];

    /// <summary>Heat made less heat lost by itself as the model has it, over some hours, W; 0 before the first update.</summary>
    public double ModelW { get; init; }

    /// <summary>What the probes put right of it, over some days, W.</summary>
    public double PutRightW { get; init; }

    /// <summary>Heat made less heat lost by itself, W.</summary>
    [JsonIgnore]
    public double NetW => ModelW + PutRightW;

    /// <summary>Whether it is of the form that is used now; one written by an older version may not be.</summary>
    [JsonIgnore]
    public bool Fits => Mean.Length == Size && Upper.Length == UpperSize && Surprise.Length == Probes
        && SpentJPerM3K.Length == HeapShape.Nodes;

    /// <summary>Whether a probe is not borne out by the others and the draw.</summary>
    /// <param name="probe">0 core, 1 middle, 2 turns, 3 edge.</param>
    public bool Doubts(int probe) => Surprise[probe] > MostSurprise || PastBelief(Mean[FirstProbe + probe]);

    /// <summary>What the heat capacity told is to be multiplied by.</summary>
    [JsonIgnore]
    public double CapacityFactor => Portable.Exp(Mean[FirstFigure + 4]);

    /// <summary>How far demand, permeability and cover lie from those told, in e-folds: the root of the sum of their squares.</summary>
    [JsonIgnore]
    public double Unlikeness
    {
        get
        {
            double demand = Mean[FirstFigure];
            double permeability = Mean[FirstFigure + 1];
            double cover = Mean[FirstFigure + 3];
            return Math.Sqrt((demand * demand) + (permeability * permeability) + (cover * cover));
        }
    }

    /// <summary>The heap as told, with what was learned.</summary>
    /// <param name="told">As told.</param>
    public HeapFigures Learned(in HeapFigures told) => Learned(told with { SpentJPerM3K = SpentJPerM3K }, Mean);

    internal static bool PastBelief(double errorK) => Math.Abs(errorK) > MostErrorK;

    internal static HeapFigures Learned(in HeapFigures told, ReadOnlySpan<double> mean) => told with
    {
        DemandWPerM3 = told.DemandWPerM3 * Portable.Exp(mean[FirstFigure]),
        PermeabilityM2 = told.PermeabilityM2 * Portable.Exp(mean[FirstFigure + 1]),
        ConductivityFactor = told.ConductivityFactor * Portable.Exp(mean[FirstFigure + 2]),
        CoverM2KPerW = told.CoverM2KPerW * Portable.Exp(-mean[FirstFigure + 3]),
        JPerM3K = told.JPerM3K * Portable.Exp(mean[FirstFigure + 4]),
        CoilWPerK = told.CoilWPerK * Portable.Exp(mean[FirstFigure + 5]),
        DemandSlope = told.DemandSlope + mean[FirstFigure + 6],
        InferredFlowFactor = Portable.Exp(mean[FirstFigure + 7]),
    };
}
