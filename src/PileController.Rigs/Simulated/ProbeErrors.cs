using PileController.Control.Readings;

namespace PileController.Rigs.Simulated;

/// <summary>Draws the fixed errors the probes of one rig were born with: the same seed, the same probes.</summary>
internal static class ProbeErrors
{
    /// <summary>Most the offsets of supply and return differ after pairing, K.</summary>
    public const double PairKelvin = 0.15;

    // Keeps the fixed errors apart from the noise, which enters the same stream by tick.
    private const ulong OffsetStream = 0x0FF5_E700_0000_0001;
    private const ulong GainStream = 0x6A17_0000_0000_0001;

    /// <summary>The fixed offset of a probe, in the channel's unit.</summary>
    public static double OffsetOf(Channel channel, ulong seed)
    {
        double most = ProbePart.Of(channel).MostOffset;

        // Supply and return are bought as a pair: one offset in common, and a small difference. The common part
        // leaves room for the difference inside the tolerance.
        return channel switch
        {
            Channel.Supply => Draw(seed, Channel.Supply) * (most - PairKelvin),
            Channel.Return =>
                (Draw(seed, Channel.Supply) * (most - PairKelvin)) + (Draw(seed, Channel.Return) * PairKelvin),
            _ => Draw(seed, channel) * most,
        };
    }

    /// <summary>The fixed factor of a probe, about 1.</summary>
    public static double GainOf(Channel channel, ulong seed) =>
        1 + (ProbePart.Of(channel).GainTolerance * SplitMix64.Even(SplitMix64.At(seed ^ GainStream, (ulong)channel)));

    private static double Draw(ulong seed, Channel channel) =>
        SplitMix64.Even(SplitMix64.At(seed ^ OffsetStream, (ulong)channel));
}
