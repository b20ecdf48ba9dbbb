using System.Device.I2c;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Hardware.I2c;

/// <summary>
/// What a power monitor saw since the tick before, as means: a load behind a slow duty is off for seconds, and a single
/// look at each tick could fall into the off-time again and again.
/// </summary>
/// <param name="fits">The probes on the monitor: power for a load, voltage for the battery.</param>
/// <param name="pause">Waits on the bus's thread.</param>
internal sealed class PowerMeans(IReadOnlyList<ProbeFit> fits, Action<TimeSpan> pause)
{
    // An idle monitor wavers by some steps of its shunt's voltage (common practice, no source); a shunt wired the wrong
    // way round says more.
    private const double WaverVolts = 0.0005;

    private const double MostBusVolts = 26;

    private readonly double[] _sums = new double[fits.Count];
    private readonly bool[] _isBeyond = new bool[fits.Count];
    private int _looks;

    /// <summary>Looks once.</summary>
    /// <exception cref="IOException">The device does not answer.</exception>
    public void Look(I2cDevice device)
    {
        (double busVolts, double shuntVolts) = new Ina219(device, pause).Measure();
        for (int i = 0; i < fits.Count; i++)
        {
            Measured measured = fits[i].Channel == Channel.Battery
                ? Measured.Within(0, MostBusVolts, busVolts)
                : Watts(busVolts, shuntVolts, fits[i].Wiring.ShuntOhms!.Value);
            _sums[i] += measured.Value;
            _isBeyond[i] |= measured.Quality != ReadingQuality.Good;
        }

        _looks++;
    }

    /// <summary>Looks once more, gives the means since the call before, and begins anew.</summary>
    /// <exception cref="IOException">The device does not answer; the looks before count in the next means.</exception>
    public IReadOnlyList<Measured> Ask(I2cDevice device)
    {
        Look(device);
        Measured[] means =
        [
            .. fits.Select((_, i) => new Measured(_isBeyond[i] ? ReadingQuality.OutOfRange : ReadingQuality.Good, _sums[i] / _looks)),
        ];
        Array.Clear(_sums);
        Array.Clear(_isBeyond);
        _looks = 0;
        return means;
    }

    private static Measured Watts(double busVolts, double shuntVolts, double shuntOhms)
    {
        double volts = shuntVolts is < 0 and > -WaverVolts ? 0 : shuntVolts;

        // At the end of its range the monitor stands still while the current goes on rising.
        return volts is >= 0 and < Ina219.MostShuntVolts
            ? Measured.Good(busVolts * volts / shuntOhms)
            : new Measured(ReadingQuality.OutOfRange, Math.Max(0, busVolts * volts / shuntOhms));
    }
}
