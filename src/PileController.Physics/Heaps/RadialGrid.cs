namespace PileController.Physics.Heaps;

/// <summary>
/// An upright ring cut into shells of equal thickness. Shell centres lie half way between their edges, so the
/// difference quotient across an inner face is of second order.
/// </summary>
public sealed class RadialGrid
{
    /// <summary>Cuts the ring between two radii.</summary>
    /// <param name="innerRadiusM">Inner radius, m; 0 for a full cylinder.</param>
    /// <param name="outerRadiusM">Outer radius, m; above the inner.</param>
    /// <param name="heightM">Height, m; above 0.</param>
    /// <param name="shells">How many shells, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is out of its range.</exception>
    public RadialGrid(double innerRadiusM, double outerRadiusM, double heightM, int shells)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(innerRadiusM);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(outerRadiusM, innerRadiusM);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(heightM);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(shells);
        Shells = shells;
        HeightM = heightM;
        ThicknessM = (outerRadiusM - innerRadiusM) / shells;
        EdgeM = new double[shells + 1];
        CentreM = new double[shells];
        PlanAreaM2 = new double[shells];
        VolumeM3 = new double[shells];
        for (int i = 0; i <= shells; i++)
        {
            EdgeM[i] = innerRadiusM + (i * ThicknessM);
        }

        for (int i = 0; i < shells; i++)
        {
            CentreM[i] = 0.5 * (EdgeM[i] + EdgeM[i + 1]);
            PlanAreaM2[i] = 2 * Math.PI * CentreM[i] * ThicknessM;
            VolumeM3[i] = PlanAreaM2[i] * heightM;
        }
    }

    /// <summary>How many shells.</summary>
    public int Shells { get; }

    /// <summary>Height, m.</summary>
    public double HeightM { get; }

    /// <summary>Thickness of each shell, m.</summary>
    public double ThicknessM { get; }

    /// <summary>Radii of the edges, m, inner first; one more than there are shells.</summary>
    public double[] EdgeM { get; }

    /// <summary>Radii of the centres, m.</summary>
    public double[] CentreM { get; }

    /// <summary>Areas seen from above, m².</summary>
    public double[] PlanAreaM2 { get; }

    /// <summary>Volumes, m³.</summary>
    public double[] VolumeM3 { get; }

    /// <summary>Outer face, m².</summary>
    public double SideAreaM2 => 2 * Math.PI * EdgeM[Shells] * HeightM;

    /// <summary>Conductance of the face between shell <paramref name="inner"/> and the next, per unit conductivity, m.</summary>
    public double FaceM(int inner) => 2 * Math.PI * EdgeM[inner + 1] * HeightM / ThicknessM;

    /// <summary>The shell in which a radius lies; radii outside the ring fall to the nearest shell.</summary>
    public int ShellAt(double radiusM) => Math.Clamp((int)((radiusM - EdgeM[0]) / ThicknessM), 0, Shells - 1);

    /// <summary>A value of the shells at a radius, linear between centres and level beyond the first and last.</summary>
    public double At(double radiusM, ReadOnlySpan<double> shellValues)
    {
        double place = ((radiusM - EdgeM[0]) / ThicknessM) - 0.5;
        if (place <= 0)
        {
            return shellValues[0];
        }

        int i = (int)place;
        return i >= Shells - 1 ? shellValues[Shells - 1] : shellValues[i] + ((place - i) * (shellValues[i + 1] - shellValues[i]));
    }
}
