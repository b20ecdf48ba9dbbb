using MathNet.Numerics;

namespace PileController.Physics.Tests.Heaps;

/// <summary>
/// A long cylinder that was warm throughout and gives its heat off through a film: the series of Bessel functions in
/// Carslaw and Jaeger, Conduction of Heat in Solids, and Incropera, Fundamentals of Heat and Mass Transfer (from memory).
/// </summary>
internal sealed class CoolingCylinder
{
    private readonly double[] _roots;

    public CoolingCylinder(double biot, int terms)
    {
        List<double> roots = [];
        double Equation(double z) => (z * SpecialFunctions.BesselJ(1, z)) - (biot * SpecialFunctions.BesselJ(0, z));
        for (double low = 1e-6; roots.Count < terms; low += 0.1)
        {
            if (Equation(low) * Equation(low + 0.1) < 0)
            {
                roots.Add(FindRoots.OfFunction(Equation, low, low + 0.1, 1e-13));
            }
        }

        _roots = [.. roots];
    }

    public double FirstRoot => _roots[0];

    /// <summary>What is left of the first difference to the surroundings, 1 at the start.</summary>
    public double Left(double fourier, double radiusShare) => _roots.Sum(z =>
    {
        double j0 = SpecialFunctions.BesselJ(0, z);
        double j1 = SpecialFunctions.BesselJ(1, z);
        return 2 / z * j1 / ((j0 * j0) + (j1 * j1)) * Math.Exp(-z * z * fourier) * SpecialFunctions.BesselJ(0, z * radiusShare);
    });
}
