using System.Globalization;
using PileController.Physics.Fluids;

namespace PileController.Physics.Tests.Fluids;

/// <summary>Our moist air against an independent library of psychrometrics, see Reference/README.md.</summary>
public class MoistAirGridTests
{
    // The library prints nine figures of each property and five decimals of each temperature, and searches those to 0.001 K.
    private const double Relative = 1e-7;
    private const double SearchedK = 2e-3;

    public static TheoryData<double, double, double, double, double, double, double, double> Grid()
    {
        TheoryData<double, double, double, double, double, double, double, double> rows = [];
        foreach (string line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", "moist-air-grid.csv")).Skip(1))
        {
            double[] c = [.. line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];
            rows.Add(c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7]);
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Grid))]
    public void State_AcrossTheGrid_AgreesWithAnIndependentLibrary(
        double temperatureC, double relative, double pressurePa, double ratio, double enthalpy, double volume, double dewPointC, double wetBulbC)
    {
        AirState air = MoistAir.State(temperatureC, relative, pressurePa);

        Assert.Equal(ratio, air.HumidityRatioKgPerKg, Relative * ratio);
        Assert.Equal(enthalpy, air.EnthalpyJPerKgDryAir, Relative * Math.Abs(enthalpy) + 1e-3);
        Assert.Equal(volume, air.SpecificVolumeM3PerKg, Relative * volume);
        Assert.Equal(dewPointC, air.DewPointC, SearchedK);
        Assert.Equal(wetBulbC, air.WetBulbC, SearchedK);
    }
}
