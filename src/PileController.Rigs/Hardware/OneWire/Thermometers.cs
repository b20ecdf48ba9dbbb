using PileController.Control.Readings;

namespace PileController.Rigs.Hardware.OneWire;

/// <summary>All DS18B20 of a rig, by the channel each was given in the settings.</summary>
/// <threadsafety>One reader at a time.</threadsafety>
internal sealed class Thermometers : IDisposable
{
    private const string ProbeFile = "w1_slave";

    private readonly List<(ProbeFit Fit, OneWireBus Bus, int Place)> _places = [];
    private readonly List<OneWireBus> _buses = [];
    private readonly TimeProvider _time;
    private readonly OneWireLimits _limits;

    /// <summary>Takes the probes that have an address; whether they are there shows when they are read.</summary>
    /// <exception cref="ArgumentException">An address that is none, is given twice, or is of a probe that is no thermometer.</exception>
    public Thermometers(RigSettings settings, TimeProvider time, OneWireLimits limits, Func<string, string> readText)
    {
        _time = time;
        _limits = limits;
        ProbeFit[] fits = [.. settings.Probes.Where(fit => fit.Address is not null)];
        Require(fits);
        string root = settings.Hardware.OneWireRoot;
        foreach (IGrouping<string, ProbeFit> wire in fits.GroupBy(fit => WireOf(Path.Combine(root, fit.Address!))))
        {
            ProbeFit[] onWire = [.. wire];
            OneWireBus bus = new(
                [.. onWire.Select(fit => new OneWireProbe(Path.Combine(root, fit.Address!, ProbeFile), readText))],
                time,
                limits);
            _buses.Add(bus);
            _places.AddRange(onWire.Select((fit, place) => (fit, bus, place)));
        }
    }

    /// <summary>Asks all probes and writes what is known at the deadline into their channels' places.</summary>
    public async Task ReadAsync(Reading[] readings, CancellationToken cancellation)
    {
        long askedAt = _time.GetTimestamp();
        try
        {
            await Task.WhenAll(_buses.Select(bus => bus.Sweep()))
                .WaitAsync(_limits.Deadline, _time, cancellation).ConfigureAwait(false);
        }
        catch (TimeoutException)
        {
            // Too slow for this tick: what is there is shown with its age, and the sweep goes on behind.
        }

        long now = _time.GetTimestamp();
        foreach ((ProbeFit fit, OneWireBus bus, int place) in _places)
        {
            readings[(int)fit.Channel] = Shown(fit, bus.Last(place), askedAt, now);
        }
    }

    /// <summary>Ends the buses' threads.</summary>
    public void Dispose()
    {
        foreach (OneWireBus bus in _buses)
        {
            bus.Dispose();
        }
    }

    private Reading Shown(ProbeFit fit, ProbeSample? sample, long askedAt, long now)
    {
        if (sample is null)
        {
            return new Reading(0, ReadingQuality.NoAnswer, 0);
        }

        TimeSpan age = sample.AskedAt >= askedAt ? TimeSpan.Zero : _time.GetElapsedTime(sample.AskedAt, now);
        int milliseconds = (int)Math.Min(age.TotalMilliseconds, int.MaxValue);
        ReadingQuality quality = sample.Answer.Quality;
        if (age > _limits.Dead)
        {
            quality = ReadingQuality.NoAnswer;
        }
        else if (sample.Answer.IsGood && age > _limits.Fresh)
        {
            quality = ReadingQuality.Late;
        }

        return quality is ReadingQuality.Good or ReadingQuality.Late or ReadingQuality.PowerOnValue
            ? Reading.FromValue(fit.Channel, sample.Answer.Celsius + fit.OffsetKelvin, quality, milliseconds)
            : new Reading(0, quality, milliseconds);
    }

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
