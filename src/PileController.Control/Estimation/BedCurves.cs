using PileController.Physics.Fluids;
using PileController.Physics.Heaps;

namespace PileController.Control.Estimation;

/// <summary>
/// What a bed of chips does as a function of its temperature alone, from published laws with nothing fitted: conductivity,
/// the gas in its pores and its vapour, and how fast microbes would work with plenty of air. Reckoned once at each whole degree.
/// </summary>
internal static class BedCurves
{
    /// <summary>Conductivity at 40 °C, W/(m·K), to which what is told of a coil refers.</summary>
    public static readonly double ReferenceWPerMK = Conductivity(40);

    private const int LeastC = -40;
    private const int MostC = 95;
    private const int Columns = 5;
    private const double PressurePa = 101_325;
    private const double DryAirGasConstant = 287.05;
    private const double VapourGasConstant = 461.5;

    // Chips as they are usually built, half water by mass and two thirds gas by volume (common practice, no source).
    private const double WaterKgPerM3 = 220;
    private const double GasShare = 0.65;

    // Of the wood that lasts a season mesophiles reach a quarter, of greens most; a blend lies between (common practice, no source).
    private const double Mesophilic = 0.35;

    private static readonly double[] Table = Make();

    /// <summary>The curves at one temperature.</summary>
    /// <param name="celsius">Temperature, °C; taken as −40 to 95.</param>
    public static BedAt At(double celsius)
    {
        double place = Math.Clamp(celsius - LeastC, 0, MostC - LeastC - 1e-9);
        int i = (int)place;
        double share = place - i;
        ReadOnlySpan<double> row = Table.AsSpan(i * Columns, 2 * Columns);
        return new BedAt(
            Between(row, 0, share), Between(row, 1, share), Between(row, 2, share), Between(row, 3, share), Between(row, 4, share));
    }

    private static double[] Make()
    {
        double[] table = new double[(MostC - LeastC + 1) * Columns];
        for (int i = 0; i <= MostC - LeastC; i++)
        {
            double t = LeastC + i;
            double kelvin = t + 273.15;
            double vapour = MoistAir.SaturationPressureFastPa(t);
            double ratio = 0.621945 * vapour / (PressurePa - vapour);
            table[i * Columns] = Conductivity(t);
            table[(i * Columns) + 1] = ((PressurePa - vapour) / (DryAirGasConstant * kelvin)) + (vapour / (VapourGasConstant * kelvin));
            table[(i * Columns) + 2] = (Stuff.GasJPerKgK * t) + (ratio * (Stuff.VapourJPerKg + (Stuff.VapourJPerKgK * t)));
            table[(i * Columns) + 3] = ratio;
            table[(i * Columns) + 4] = Math.Min(1, Microbes.Thermophilic.At(t) + (Mesophilic * Microbes.Mesophilic.At(t)));
        }

        return table;
    }

    private static double Between(ReadOnlySpan<double> rows, int column, double share) =>
        rows[column] + (share * (rows[Columns + column] - rows[column]));

    private static double Conductivity(double celsius) =>
        Stuff.ConductivityWPerMK(WaterKgPerM3, GasShare, celsius, MoistAir.SaturationPressureFastPa(celsius));
}

/// <summary>The bed at one temperature.</summary>
/// <param name="ConductivityWPerMK">Conductivity, W/(m·K) (range of Ahn, Sauer, Richard, Glanville 2009).</param>
/// <param name="GasKgPerM3">Density of the saturated gas in the pores, kg/m³.</param>
/// <param name="GasJPerKg">Enthalpy of that gas per kilogram of dry air, above 0 °C, J/kg.</param>
/// <param name="VapourPerGas">Water vapour that gas holds, kg/kg of dry air.</param>
/// <param name="Work">How fast microbes work, share of their best.</param>
internal readonly record struct BedAt(double ConductivityWPerMK, double GasKgPerM3, double GasJPerKg, double VapourPerGas, double Work);
