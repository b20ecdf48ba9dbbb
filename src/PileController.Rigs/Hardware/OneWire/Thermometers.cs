using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Hardware.OneWire;

/// <summary>All DS18B20 of a rig, by the channel each was given in the settings.</summary>
/// <threadsafety>One reader at a time.</threadsafety>
internal sealed class Thermometers : IInputGroup
{
    private const string ProbeFile = "w1_slave";

    private readonly BusInputs _inputs;

    /// <summary>Takes the probes that have an address; whether they are there shows when they are read.</summary>
    /// <param name="settings">The probes, and where the kernel's files are.</param>
    /// <param name="time">Clock.</param>
    /// <param name="limits">How long the wires may take.</param>
    /// <param name="readText">Reads a file's text, or throws.</param>
    /// <param name="writeText">Writes a file's text, or throws; it starts a conversion of all probes at once.</param>
    /// <exception cref="ArgumentException">An address that is none, is given twice, or is of a probe that is no thermometer.</exception>
    public Thermometers(
        RigSettings settings, TimeProvider time, BusLimits limits, Func<string, string> readText, Action<string, string> writeText)
    {
        ProbeFit[] fits = [.. settings.Probes.Where(fit => fit.Address is not null)];
        Require(fits);
        string root = settings.Hardware.OneWireRoot;
        List<BusPlace> places = [];
        List<ProbeBus> buses = [];
        foreach (IGrouping<string, ProbeFit> wire in fits.GroupBy(fit => WireOf(Path.Combine(root, fit.Address!))))
        {
            ProbeFit[] onWire = [.. wire];
            ProbeBus bus = new(
                [.. onWire.Select(fit => new OneWireProbe(Path.Combine(root, fit.Address!, ProbeFile), readText))],
                time,
                limits,
                new BulkConversion(wire.Key, writeText).Run);
            buses.Add(bus);
            places.AddRange(onWire.Select((fit, place) => new BusPlace(fit, bus, place, 0)));
        }

        _inputs = new BusInputs(buses, places, time, limits);
    }

    /// <inheritdoc/>
    public Task ReadAsync(Reading[] readings, CancellationToken cancellation) => _inputs.ReadAsync(readings, cancellation);

    /// <summary>Ends the buses' threads.</summary>
    public void Dispose() => _inputs.Dispose();

    private static void Require(ProbeFit[] fits)
    {
        HashSet<string> seen = [];
        foreach (ProbeFit fit in fits)
        {
            string name = ChannelTable.Of(fit.Channel).Name;
            if (!ChannelKinds.IsThermometer(fit.Channel))
            {
                throw new ArgumentException($"Probes: {name} has the 1-Wire address {fit.Address}; only a temperature has one.", nameof(fits));
            }

            if (!OneWireAddress.IsValid(fit.Address!))
            {
                throw new ArgumentException(
                    $"Probes: {name} has the address \"{fit.Address}\"; allowed is 28- and twelve digits 0 to 9, a to f.", nameof(fits));
            }

            if (!seen.Add(fit.Address!))
            {
                throw new ArgumentException($"Probes: the address {fit.Address} is given twice, the second time to {name}.", nameof(fits));
            }
        }
    }

    // The kernel links each probe into one folder; the folder behind the link is the wire it hangs on.
    private static string WireOf(string folder)
    {
        try
        {
            FileSystemInfo real = Directory.ResolveLinkTarget(folder, returnFinalTarget: true) ?? new DirectoryInfo(folder);
            return Path.GetDirectoryName(real.FullName) ?? real.FullName;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // Not there now: it may come back, and then waits with those of the folder itself.
            return Path.GetDirectoryName(Path.GetFullPath(folder)) ?? folder;
        }
    }
}
