using System.Device.I2c;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Hardware.I2c;

/// <summary>What a device of each kind is asked for the probes that hang on it.</summary>
internal static class I2cAsking
{
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

    /// <summary>An air probe, measured once for all.</summary>
    public static IReadOnlyList<Measured> Air(I2cDevice device, IReadOnlyList<ProbeFit> fits, Action<TimeSpan> pause)
    {
        (Measured celsius, Measured percent) = new Sht4x(device, pause).Measure();
        return [.. fits.Select(fit => fit.Channel == Channel.Humidity ? percent : celsius)];
    }
}
