using System.Device.I2c;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Hardware.I2c;

/// <summary>All probes behind I2C devices: one thread a bus, whose devices are asked in turn.</summary>
/// <threadsafety>One reader at a time.</threadsafety>
internal sealed class I2cInputs : IInputGroup
{
    private readonly BusInputs _inputs;
    private readonly List<I2cStation> _stations = [];

    /// <summary>Takes the probes that come from an I2C device; whether it is there shows when it is asked.</summary>
    /// <param name="probes">The probes; their wiring is sound (<see cref="WiringFaults"/>).</param>
    /// <param name="time">Clock.</param>
    /// <param name="limits">How long the buses may take.</param>
    /// <param name="open">Opens the device at an address of a bus, or throws.</param>
    /// <param name="pause">Waits on a bus's thread.</param>
    /// <param name="report">Told when a device falls silent and when it answers again.</param>
    public I2cInputs(
        IReadOnlyList<ProbeFit> probes, TimeProvider time, BusLimits limits, Func<I2cConnectionSettings, I2cDevice> open,
        Action<TimeSpan> pause, Action<string> report)
    {
        List<BusPlace> places = [];
        List<ProbeBus> buses = [];
        foreach (IGrouping<int, ProbeFit> wire in probes.Where(fit => SourceTable.IsOnI2c(fit.Source)).GroupBy(fit => fit.Wiring.Bus!.Value))
        {
            ProbeFit[][] devices = [.. wire.GroupBy(fit => fit.Wiring.Device).Select(group => group.ToArray())];
            I2cStation[] stations = [.. devices.Select(fits => Station(fits, time, open, pause, report))];
            ProbeBus bus = new(stations, time, limits);
            _stations.AddRange(stations);
            buses.Add(bus);
            places.AddRange(devices.SelectMany((fits, station) => fits.Select((fit, i) => new BusPlace(fit, bus, station, i))));
        }

        _inputs = new BusInputs(buses, places, time, limits);
    }

    /// <inheritdoc/>
    public Task ReadAsync(Reading[] readings, CancellationToken cancellation) => _inputs.ReadAsync(readings, cancellation);

    /// <summary>Ends the buses' threads, then closes the devices.</summary>
    public void Dispose()
    {
        _inputs.Dispose();
        _stations.ForEach(station => station.Dispose());
    }

    private static I2cStation Station(
        ProbeFit[] fits, TimeProvider time, Func<I2cConnectionSettings, I2cDevice> open, Action<TimeSpan> pause, Action<string> report)
    {
        ProbeWiring wiring = fits[0].Wiring;
        I2cConnectionSettings place = new(wiring.Bus!.Value, wiring.Device!.Value);
        string at = $"0x{wiring.Device:x2} on I2C bus {wiring.Bus}";
        PowerMeans power = new(fits, pause);
        Scd4x gas = new(time, pause);
        return fits[0].Source switch
        {
            ProbeSource.Ads1115 => new I2cStation(
                $"the converter {at}", () => open(place), device => I2cAsking.Dividers(device, fits, pause), null, fits.Length, time, report),
            ProbeSource.Sht4x => new I2cStation(
                $"the air probe {at}", () => open(place), device => I2cAsking.Air(device, fits, pause), null, fits.Length, time, report),
            ProbeSource.Scd4x => new I2cStation(
                $"the carbon dioxide probe {at}", () => open(place), device => [gas.Ppm(device)], null, fits.Length, time, report),
            _ => new I2cStation(
                $"the power monitor {at}", () => open(place), power.Ask, power.Look, fits.Length, time, report),
        };
    }
}
