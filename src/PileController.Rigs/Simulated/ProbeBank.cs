using PileController.Control.Readings;

namespace PileController.Rigs.Simulated;

/// <summary>
/// All simulated probes but the flow meter: lag, fixed errors, noise, grain. Everything that does not change from
/// tick to tick is worked out once, because a season is over a million ticks.
/// </summary>
internal sealed class ProbeBank
{
    // Later channels have a stream of their own, so that the noise of the first ones is what it was before there were any.
    private const ulong LaterStream = 0x1A7E_2000_0000_0001;
    private const int Later = ChannelTable.Count - ChannelTable.FirstCount;
    private readonly ProbeFit[] _fits;
    private readonly ProbePart[] _parts;
    private readonly int[] _channels;
    private readonly bool[] _switches;
    private readonly double[] _offsets;
    private readonly double[] _gains;
    private readonly double[] _perQuantum;
    private readonly double[] _shares;
    private readonly double[] _lagged;
    private readonly ulong _seed;
    private double _sharesForSeconds = double.NaN;

    public ProbeBank(IReadOnlyList<ProbeFit> probes, long seed, IPlant plant)
    {
        _seed = unchecked((ulong)seed);
        _fits = [.. probes.Where(probe => probe.Channel != Channel.Flow)];
        _parts = [.. _fits.Select(fit => ProbePart.Of(fit.Channel))];
        _channels = [.. _fits.Select(fit => (int)fit.Channel)];
        _switches = [.. _fits.Select(fit => ChannelKinds.IsSwitch(fit.Channel))];
        _offsets = [.. _fits.Select(fit => ProbeErrors.OffsetOf(fit.Channel, _seed))];
        _gains = [.. _fits.Select(fit => ProbeErrors.GainOf(fit.Channel, _seed))];
        _perQuantum = [.. _fits.Select(fit => 1 / ChannelTable.Of(fit.Channel).Quantum)];
        _shares = new double[_fits.Length];

        // A probe that has hung there for long shows what it sits in.
        _lagged = [.. _fits.Select(plant.TrueValue)];
    }

    /// <summary>Lets every probe follow the truth for a while.</summary>
    public void Follow(IPlant plant, double seconds)
    {
        if (seconds != _sharesForSeconds)
        {
            Retune(seconds);
        }

        for (int i = 0; i < _fits.Length; i++)
        {
            _lagged[i] += _shares[i] * (plant.TrueValue(_fits[i]) - _lagged[i]);
        }
    }

    /// <summary>Writes what the probes say at a tick into their channels' places.</summary>
    public void Fill(Reading[] readings, long tick)
    {
        for (int i = 0; i < _fits.Length; i++)
        {
            readings[_channels[i]] = new Reading(Quanta(i, unchecked((ulong)tick)), ReadingQuality.Good, 0);
        }
    }

    /// <summary>Where each probe's lag stands.</summary>
    public IReadOnlyList<LaggedProbe> Export() =>
        [.. _fits.Select((fit, i) => new LaggedProbe(fit.Channel, _lagged[i]))];

    /// <summary>Takes up where <see cref="Export"/> left off.</summary>
    /// <exception cref="ArgumentException">The state is of other probes than are fitted.</exception>
    public void Restore(IReadOnlyList<LaggedProbe> probes)
    {
        // A state from before a probe was fitted: the probes at the end stay as they hang there now.
        if (probes.Count > _channels.Length || !probes.Select(probe => (int)probe.Channel).SequenceEqual(_channels[..probes.Count]))
        {
            throw new ArgumentException(
                $"State.Probes has {string.Join(", ", probes.Select(probe => probe.Channel))}; "
                + $"fitted are {string.Join(", ", _fits.Select(fit => fit.Channel))}, and they must be the same in the same order.",
                nameof(probes));
        }

        for (int i = 0; i < probes.Count; i++)
        {
            _lagged[i] = probes[i].Value;
        }
    }

    private ulong Noise(int channel, ulong tick) => unchecked(channel < ChannelTable.FirstCount
        ? SplitMix64.At(_seed, (tick * ChannelTable.FirstCount) + (ulong)channel)
        : SplitMix64.At(_seed ^ LaterStream, (tick * Later) + (ulong)(channel - ChannelTable.FirstCount)));

    private int Quanta(int i, ulong tick)
    {
        double truth = _lagged[i];
        if (_switches[i])
        {
            return truth >= 0.5 ? 1 : 0;
        }

        ProbePart part = _parts[i];
        ulong bits = Noise(_channels[i], tick);
        double shown = (truth * _gains[i]) + _offsets[i] + (part.NoiseSigma * SplitMix64.NearNormal(bits));
        if (part.Grain > 0)
        {
            shown = Math.Round(shown / part.Grain, MidpointRounding.AwayFromZero) * part.Grain;
        }

        shown = Math.Clamp(shown, part.Least, part.Most) + _fits[i].OffsetKelvin;

        // Quanta are powers of two, so multiplying gives the bits that Reading.FromValue gets by dividing.
        return (int)Math.Round(shown * _perQuantum[i], MidpointRounding.AwayFromZero);
    }

    private void Retune(double seconds)
    {
        for (int i = 0; i < _shares.Length; i++)
        {
            double lag = _parts[i].LagSeconds;
            _shares[i] = lag > 0 ? -double.ExpM1(-seconds / lag) : 1;
        }

        _sharesForSeconds = seconds;
    }
}
