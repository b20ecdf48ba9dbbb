using PileController.Physics.Heaps;

namespace PileController.Control.Estimation;

/// <summary>The heap as the observer cuts it: rings round the drum, one sleeve of bed round the pipe. Told, never learned.</summary>
public sealed class HeapShape
{
    /// <summary>How many rings.</summary>
    public const int Rings = 10;

    /// <summary>Where the sleeve's temperature stands, after those of the rings from the middle out.</summary>
    public const int Sleeve = Rings;

    /// <summary>Where the temperature of the drum's water stands, last.</summary>
    public const int Drum = Rings + 1;

    /// <summary>How many temperatures there are.</summary>
    public const int Nodes = Rings + 2;

    // Share of its ring that the sleeve takes: the bed to half way between two turns (common practice, no source).
    private const double SleeveShare = 0.4;

    // A heap without a drum keeps a node of a litre in its place, which changes nothing.
    private const double LeastDrumLitres = 1;

    private readonly double[] _volumeM3 = new double[Rings];
    private readonly double[] _planM2 = new double[Rings];
    private readonly double[] _faceM = new double[Rings];
    private readonly double[] _draughtPerM = new double[Rings];

    /// <summary>Cuts a heap.</summary>
    /// <param name="settings">What is told of it.</param>
    public HeapShape(ControlSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        double litres = Math.Max(LeastDrumLitres, settings.DrumLitres);
        RadiusM = settings.Places.RadiusM;
        HeightM = settings.HeapHeightM;
        InnerM = Math.Min(0.5 * RadiusM, Math.Sqrt(litres * 0.001 / (Math.PI * HeightM)));
        ThicknessM = (RadiusM - InnerM) / Rings;
        DrumJPerK = litres * Stuff.WaterJPerKgK;
        for (int i = 0; i < Rings; i++)
        {
            double outer = InnerM + ((i + 1) * ThicknessM);
            double centre = outer - (0.5 * ThicknessM);
            _planM2[i] = 2 * Math.PI * centre * ThicknessM;
            _volumeM3[i] = _planM2[i] * HeightM;
            _faceM[i] = 2 * Math.PI * outer * HeightM / ThicknessM;
            _draughtPerM[i] = 1 / (HeightM + RadiusM - centre);
            BedM3 += _volumeM3[i];
        }

        DrumFaceM = 2 * Math.PI * InnerM * HeightM / (0.5 * ThicknessM);
        CoilRing = RingAt(settings.CoilRadiusM);
        DuctRing = RingAt(settings.DuctRadiusM);
        SleeveM3 = settings.CoilWPerK > 0 ? SleeveShare * _volumeM3[CoilRing] : 0.01 * _volumeM3[CoilRing];
        _volumeM3[CoilRing] -= SleeveM3;
    }

    /// <summary>Radius of the heap, m.</summary>
    public double RadiusM { get; }

    /// <summary>Its height, m.</summary>
    public double HeightM { get; }

    /// <summary>Where the bed begins, m from the axis.</summary>
    public double InnerM { get; }

    /// <summary>Thickness of a ring, m.</summary>
    public double ThicknessM { get; }

    /// <summary>Volume of the bed, m³.</summary>
    public double BedM3 { get; }

    /// <summary>Volume of the sleeve, m³; that of its ring is without it.</summary>
    public double SleeveM3 { get; }

    /// <summary>Heat capacity of the drum's water, J/K.</summary>
    public double DrumJPerK { get; }

    /// <summary>Conductance from drum to innermost ring, per unit of conductivity, m.</summary>
    public double DrumFaceM { get; }

    /// <summary>The ring the coil lies in.</summary>
    public int CoilRing { get; }

    /// <summary>The ring the ducts lie in.</summary>
    public int DuctRing { get; }

    /// <summary>Areas of the rings seen from above, the sleeve's within its ring, m².</summary>
    public ReadOnlySpan<double> PlanM2 => _planM2;

    /// <summary>Volumes of the rings, the sleeve taken off, m³.</summary>
    public ReadOnlySpan<double> VolumeM3 => _volumeM3;

    /// <summary>Conductance of each ring's outer face to the next ring, per unit of conductivity, m.</summary>
    public ReadOnlySpan<double> FaceM => _faceM;

    /// <summary>One over the way air takes through each ring, under the outer ones and up, 1/m.</summary>
    public ReadOnlySpan<double> DraughtPerM => _draughtPerM;

    /// <summary>Radius of the middle of a ring, m.</summary>
    public double CentreM(int ring) => InnerM + ((ring + 0.5) * ThicknessM);

    /// <summary>Volume of a node's bed, m³; 0 for the drum.</summary>
    public double BedM3Of(int node) => node < Rings ? _volumeM3[node] : node == Sleeve ? SleeveM3 : 0;

    private int RingAt(double radiusM) => Math.Clamp((int)((radiusM - InnerM) / ThicknessM), 0, Rings - 1);
}
