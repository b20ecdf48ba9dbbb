using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Hardware.I2c;

/// <summary>Temperature from a divider: the reference resistor above, the sensor between the input and ground.</summary>
internal static class ResistorThermometer
{
    // IEC 60751: R = R0·(1 + A·t + B·t² + C·(t - 100)·t³), the last part below 0 °C only.
    private const double PlatinumOhms = 1000;
    private const double A = 3.9083e-3;
    private const double B = -5.775e-7;
    private const double C = -4.183e-12;

    private const double ZeroKelvin = 273.15;
    private const double TwentyFiveKelvin = ZeroKelvin + 25;

    // What a sound sensor of this rig can report, °C: as the 1-Wire probes.
    private const double Least = -55;
    private const double Most = 125;

    // Beyond these shares of the divider's voltage the wire is broken or shorted, not hot or cold.
    private const double OpenShare = 0.995;
    private const double ShortedShare = 0.002;

    private const double LeastExcitationVolts = 0.5;

    /// <summary>What a divider says.</summary>
    /// <param name="wiring">Sensor and reference resistor.</param>
    /// <param name="volts">Voltage at the input, V; null where it was beyond the converter's range.</param>
    /// <param name="excitationVolts">Voltage over the whole divider, V; null where it was beyond the converter's range.</param>
    public static Measured Of(ProbeWiring wiring, double? volts, double? excitationVolts)
    {
        // Without its excitation the divider says nothing; beyond the range neither.
        if (volts is not { } atInput || excitationVolts is not >= LeastExcitationVolts)
        {
            return Measured.Failed(ReadingQuality.NoAnswer);
        }

        double share = atInput / excitationVolts.Value;
        if (share >= OpenShare)
        {
            return Measured.Failed(ReadingQuality.NoAnswer);
        }

        if (share <= ShortedShare)
        {
            return Measured.Failed(ReadingQuality.Shorted);
        }

        double ohms = wiring.ReferenceOhms!.Value * share / (1 - share);
        return Measured.Within(Least, Most, wiring.Sensor == ResistorKind.Ntc
            ? ThermistorCelsius(ohms, wiring.OhmsAt25C!.Value, wiring.BetaKelvin!.Value)
            : PlatinumCelsius(ohms));
    }

    /// <summary>Temperature of platinum of 1000 Ω at 0 °C, °C; not a number beyond the curve's end.</summary>
    public static double PlatinumCelsius(double ohms)
    {
        double ratio = ohms / PlatinumOhms;
        double celsius = (-A + Math.Sqrt((A * A) - (4 * B * (1 - ratio)))) / (2 * B);
        if (celsius >= 0 || double.IsNaN(celsius))
        {
            return celsius;
        }

        // Below zero the cubic part bends it by two kelvin at most: a few of Newton's steps find it.
        for (int step = 0; step < 4; step++)
        {
            double t = celsius;
            double over = 1 + (A * t) + (B * t * t) + (C * (t - 100) * t * t * t) - ratio;
            celsius -= over / (A + (2 * B * t) + (C * ((4 * t) - 300) * t * t));
        }

        return celsius;
    }

    /// <summary>Temperature of a thermistor, °C: 1/T = 1/T25 + ln(R/R25)/B.</summary>
    public static double ThermistorCelsius(double ohms, double ohmsAt25C, double betaKelvin) =>
        (1 / ((1 / TwentyFiveKelvin) + (Math.Log(ohms / ohmsAt25C) / betaKelvin))) - ZeroKelvin;
}
