namespace PileController.Physics.Heaps;

/// <summary>
/// The bed round the buried pipe as rings of growing thickness from the pipe's face to half way to the next turn.
/// This is what a core probe cannot see: it cools within minutes of a draw and warms again within hours of rest.
/// </summary>
internal sealed class Sleeve
{
    // The sleeve takes at most this share of its shell; the rest is the bed between the turns.
    private const double LargestShare = 0.6;

    /// <summary>How many rings the sleeve has.</summary>
    public const int Rings = 4;

    private readonly double[] _linkM;
    private readonly double _outM;
    private readonly double _wallM;

    public Sleeve(CoilBuild coil, double shellVolumeM3)
    {
        double pipe = 0.5 * coil.OuterDiameterM;
        double reach = Math.Sqrt((pipe * pipe) + (LargestShare * shellVolumeM3 / (Math.PI * coil.LengthM)));
        double far = Math.Sqrt((pipe * pipe) + (shellVolumeM3 / (Math.PI * coil.LengthM)));
        double growth = Portable.Pow(reach / pipe, 1.0 / Rings);
        VolumeM3 = new double[Rings];
        _linkM = new double[Rings];
        double inner = pipe;
        double centre = 0;
        for (int i = 0; i < Rings; i++)
        {
            double outer = inner * growth;
            VolumeM3[i] = Math.PI * ((outer * outer) - (inner * inner)) * coil.LengthM;
            double middle = Math.Sqrt(0.5 * ((inner * inner) + (outer * outer)));
            if (i == 0)
            {
                _wallM = 2 * Math.PI * coil.LengthM / Portable.Log(middle / pipe);
            }
            else
            {
                _linkM[i - 1] = 2 * Math.PI * coil.LengthM / Portable.Log(middle / centre);
            }

            centre = middle;
            inner = outer;
        }

        _outM = 2 * Math.PI * coil.LengthM / Portable.Log(Math.Sqrt(0.5 * ((reach * reach) + (far * far))) / centre);
        Chain = new Chain(Rings + 1);
    }

    public double[] VolumeM3 { get; }

    /// <summary>The rings from the pipe outwards; the last node is the rest of the shell.</summary>
    public Chain Chain { get; }

    /// <summary>Conductance from the innermost ring to the pipe's face, W/K.</summary>
    public double WallWPerK { get; private set; }

    /// <summary>Takes over the bed's conductivity and capacity after a slow step.</summary>
    /// <param name="conductivity">Of each ring, W/(m·K).</param>
    /// <param name="capacityJPerK">Of each ring, J/K.</param>
    /// <param name="shellJPerK">Of the rest of the shell, J/K.</param>
    public void Refresh(ReadOnlySpan<double> conductivity, ReadOnlySpan<double> capacityJPerK, double shellJPerK)
    {
        WallWPerK = _wallM * conductivity[0];
        for (int i = 0; i < Rings; i++)
        {
            Chain.CapacityJPerK[i] = capacityJPerK[i];
            if (i + 1 < Rings)
            {
                Chain.LinkWPerK[i] = _linkM[i] * 0.5 * (conductivity[i] + conductivity[i + 1]);
            }
        }

        Chain.LinkWPerK[Rings - 1] = _outM * conductivity[Rings - 1];
        Chain.CapacityJPerK[Rings] = shellJPerK;
    }
}
