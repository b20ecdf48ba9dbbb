namespace PileController.Physics.Fluids;

public static partial class MoistAir
{
    // Below the triple point the vapour stands over ice.
    private const double TriplePointC = 0.01;

    /// <summary>Saturation pressure over ice below 0.01 °C and over water above, Pa (Hyland and Wexler's formulae as ASHRAE gives them).</summary>
    /// <param name="temperatureC">Temperature, °C, −100 to 200.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public static double SaturationPressurePa(double temperatureC)
    {
        Require.Within(temperatureC, -100, 200, "°C");
        return Portable.Exp(LogSaturationPressure(temperatureC));
    }

    /// <summary>
    /// The same without a transcendental function, for use in every simulated step: the fourth power of a polynomial,
    /// a least-squares fit of our own within 4e-6 of <see cref="SaturationPressurePa"/>.
    /// </summary>
    /// <param name="temperatureC">Temperature, °C, −40 to 95.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public static double SaturationPressureFastPa(double temperatureC)
    {
        Require.Within(temperatureC, -40, 95, "°C");
        double x = temperatureC * 0.01;
        double root = temperatureC <= TriplePointC
            ? 4.972076071 + (x * (10.23605236 + (x * (6.755235025 + (x * (0.8116142127 + (x * -0.5233481838)))))))
            : 4.972199312 + (x * (9.029737164 + (x * (4.494816654 + (x * (-0.3939995406 + (x * (-0.3736486904 + (x * 0.1165338634)))))))));
        double square = root * root;
        return square * square;
    }

    private static double LogSaturationPressure(double temperatureC)
    {
        double t = temperatureC + 273.15;
        double log = Portable.Log(t);
        return temperatureC <= TriplePointC
            ? (-5674.5359 / t) + 6.3925247 + (t * (-9.677843e-3 + (t * (6.2215701e-7 + (t * (2.0747825e-9 + (t * -9.484024e-13))))))) + (4.1635019 * log)
            : (-5800.2206 / t) + 1.3914993 + (t * (-0.048640239 + (t * (4.1764768e-5 + (t * -1.4452093e-8))))) + (6.5459673 * log);
    }
}
