using PileController.Physics.Heaps;

namespace PileController.Control.Estimation;

/// <summary>
/// The heap as the observer cuts it: rings round the drum, the turns in the middle of one of them, and one sleeve of bed round
/// the pipe. Told, never learned.
/// </summary>
public sealed class HeapShape
{
    /// <summary>How many rings.</summary>
    public const int Rings = 12;

    /// <summary>Where the sleeve's temperature stands, after those of the rings from the middle out.</summary>
    public const int Sleeve = Rings;

    /// <summary>Where the temperature of the drum's water stands, last.</summary>
    public const int Drum = Rings + 1;

    /// <summary>How many temperatures there are.</summary>
    public const int Nodes = Rings + 2;

    // Share of its ring that the sleeve takes: the bed to half way between two turns (common practice, no source).
    private const double SleeveShare = 0.5;

    // Mean over the volume of the distance from the axis, as a share of the radius.
    private const double MeanOutness = 2.0 / 3;

    // A heap without a drum keeps a node of a litre in its place, which changes nothing.
    private const double LeastDrumLitres = 1;

    private readonly double[] _edgeM = new double[Rings + 1];
    private readonly double[] _volumeM3 = new double[Rings];
    private readonly double[] _planM2 = new double[Rings];
    private readonly double[] _faceM = new double[Rings];
    private readonly double[] _draughtPerM = new double[Rings];
    private readonly double[] _outness = new double[Rings];
    private readonly double[] _ductShare = new double[Rings];

    /// <summary>Cuts a heap.</summary>
    /// <param name="settings">What is told of it.</param>
    public HeapShape(ControlSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        double litres = Math.Max(LeastDrumLitres, settings.DrumLitres);
        RadiusM = settings.Places.RadiusM;
        HeightM = settings.HeapHeightM;
        InnerM = Math.Min(0.5 * RadiusM, Math.Sqrt(litres * 0.001 / (Math.PI * HeightM)));
        DrumJPerK = litres * Stuff.WaterJPerKgK;

        // Heat falls steeply towards the turns, so a ring that has them at its edge would put the cold in the wrong place.
        double usual = (RadiusM - InnerM) / Rings;
        double coil = Math.Clamp(settings.CoilRadiusM, InnerM + usual, RadiusM - usual);
        int within = Math.Clamp((int)Math.Round((coil - InnerM) / usual - 0.5), 1, Rings - 2);
        CoilRing = within;
        for (int i = 0; i <= Rings; i++)
        {
            double inner = coil - (0.5 * usual);
            double outer = coil + (0.5 * usual);
            _edgeM[i] = i <= within
                ? InnerM + ((inner - InnerM) * i / within)
                : outer + ((RadiusM - outer) * (i - within - 1) / (Rings - 1 - within));
        }

        for (int i = 0; i < Rings; i++)
        {
            double centre = CentreM(i);
            double thickness = _edgeM[i + 1] - _edgeM[i];
            _planM2[i] = 2 * Math.PI * centre * thickness;
            _volumeM3[i] = _planM2[i] * HeightM;
            _faceM[i] = i + 1 < Rings ? 2 * Math.PI * _edgeM[i + 1] * HeightM / (CentreM(i + 1) - centre) : 0;
            _draughtPerM[i] = 1 / (HeightM + RadiusM - centre);
            _outness[i] = (centre / RadiusM) - MeanOutness;
            BedM3 += _volumeM3[i];
        }

        DrumFaceM = 2 * Math.PI * InnerM * HeightM / (CentreM(0) - InnerM);
        SideM2 = 2 * Math.PI * RadiusM * HeightM;
        RimM = RadiusM - CentreM(Rings - 1);
        DuctRing = RingAt(settings.DuctRadiusM);
        ShareDucts(settings.DuctRadiusM);
        SleeveM3 = settings.CoilWPerK > 0 ? SleeveShare * _volumeM3[CoilRing] : 0.01 * _volumeM3[CoilRing];
        _volumeM3[CoilRing] -= SleeveM3;
    }

    /// <summary>Radius of the heap, m.</summary>
    public double RadiusM { get; }

    /// <summary>Its height, m.</summary>
    public double HeightM { get; }

    /// <summary>Where the bed begins, m from the axis.</summary>
    public double InnerM { get; }

    /// <summary>Outer face, m².</summary>
    public double SideM2 { get; }

    /// <summary>From the middle of the outermost ring to that face, m.</summary>
    public double RimM { get; }

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

    /// <summary>
    /// Share of the ducts' draw that each ring bears: all that is drawn between the middles of two rings is drawn from both, the
    /// more from the nearer, or the cold would stand half a ring from where it is.
    /// </summary>
    public ReadOnlySpan<double> DuctShare => _ductShare;

    /// <summary>Areas of the rings seen from above, the sleeve's within its ring, m².</summary>
    public ReadOnlySpan<double> PlanM2 => _planM2;

    /// <summary>Volumes of the rings, the sleeve taken off, m³.</summary>
    public ReadOnlySpan<double> VolumeM3 => _volumeM3;

    /// <summary>Conductance of each ring's outer face to the next ring, per unit of conductivity, m.</summary>
    public ReadOnlySpan<double> FaceM => _faceM;

    /// <summary>One over the way air takes through each ring, under the outer ones and up, 1/m.</summary>
    public ReadOnlySpan<double> DraughtPerM => _draughtPerM;

    /// <summary>How much further out each ring lies than the bed on the mean, as a share of the radius.</summary>
    public ReadOnlySpan<double> Outness => _outness;

    /// <summary>Radii of the edges, m, inner first; one more than there are rings.</summary>
    public ReadOnlySpan<double> EdgeM => _edgeM;

    /// <summary>Radius of the middle of a ring, m.</summary>
    public double CentreM(int ring) => 0.5 * (_edgeM[ring] + _edgeM[ring + 1]);

    /// <summary>Volume of a node's bed, m³; 0 for the drum.</summary>
    public double BedM3Of(int node) => node < Rings ? _volumeM3[node] : node == Sleeve ? SleeveM3 : 0;

    /// <summary>The ring a radius lies in; radii outside the bed fall to the nearest.</summary>
    public int RingAt(double radiusM)
    {
        int ring = 0;
        while (ring < Rings - 1 && radiusM >= _edgeM[ring + 1])
        {
            ring++;
        }

        return ring;
    }

    private void ShareDucts(double radiusM)
    {
        int inner = 0;
        while (inner < Rings - 2 && radiusM > CentreM(inner + 1))
        {
            inner++;
        }

        double outward = Math.Clamp((radiusM - CentreM(inner)) / (CentreM(inner + 1) - CentreM(inner)), 0, 1);
        _ductShare[inner] = 1 - outward;
        _ductShare[inner + 1] = outward;
    }
}
