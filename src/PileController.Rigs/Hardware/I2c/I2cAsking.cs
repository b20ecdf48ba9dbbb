using System.Device.I2c;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Hardware.I2c;

/// <summary>What a device of each kind is asked for the probes that hang on it.</summary>
internal static class I2cAsking
{
    // An idle monitor wavers by some steps of its shunt's voltage (common practice, no source); a shunt wired the wrong
    // way round says more.
    private const double WaverVolts = 0.0005;

    private const double MostBusVolts = 26;

    /// <summary>A converter: each divider's input, and the excitation where it is measured, once for all.</summary>
    public static IReadOnlyList<Measured> Dividers(I2cDevice device, IReadOnlyList<ProbeFit> fits, Action<TimeSpan> pause)
    {
        Ads1115 converter = new(device, pause);
        Dictionary<int, double?> excitations = [];
        foreach (int input in fits.Select(fit => fit.Wiring.ExcitationInput).OfType<int>().Distinct())
        {
            excitations[input] = converter.Volts(input);
        }

        return
        [
            .. fits.Select(fit => ResistorThermometer.Of(
                fit.Wiring,
                converter.Volts(fit.Wiring.Input!.Value),
                fit.Wiring.ExcitationInput is { } input ? excitations[input] : fit.Wiring.ExcitationVolts)),
        ];
    }

    /// <summary>An air probe.</summary>
    public static IReadOnlyList<Measured> Air(I2cDevice device, Action<TimeSpan> pause) => [new Sht4x(device, pause).Celsius()];

    /// <summary>A power monitor: power for a load, voltage for the battery.</summary>
    public static IReadOnlyList<Measured> Power(I2cDevice device, IReadOnlyList<ProbeFit> fits, Action<TimeSpan> pause)
    {
        (double busVolts, double shuntVolts) = new Ina219(device, pause).Measure();
        return
        [
            .. fits.Select(fit => fit.Channel == Channel.Battery
                ? Measured.Within(0, MostBusVolts, busVolts)
                : Watts(busVolts, shuntVolts, fit.Wiring.ShuntOhms!.Value)),
        ];
    }

    private static Measured Watts(double busVolts, double shuntVolts, double shuntOhms)
    {
        double volts = Math.Abs(shuntVolts) < WaverVolts && shuntVolts < 0 ? 0 : shuntVolts;

        // At the end of its range the monitor stands still while the current goes on rising.
        return volts is >= 0 and < Ina219.MostShuntVolts
            ? Measured.Good(busVolts * volts / shuntOhms)
            : new Measured(ReadingQuality.OutOfRange, Math.Max(0, busVolts * volts / shuntOhms));
    }
}
