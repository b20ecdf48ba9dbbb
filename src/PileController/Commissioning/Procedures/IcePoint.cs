using PileController.Control.Readings;
using PileController.Settings;

namespace PileController.Commissioning.Procedures;

/// <summary>Probes in melting ice, which is at 0 °C: what they say there is their error.</summary>
internal static class IcePoint
{
    /// <summary>How far a bucket of crushed ice and water may be from 0 °C, K (common practice, no source).</summary>
    public const double UsualBathKelvin = 0.1;

    // Error limit of the probe itself from -10 to +85 °C (SEN-020, DS18B20 data sheet rev 042208).
    private const double PartLimitKelvin = 0.5;

    /// <summary>The test.</summary>
    /// <param name="settings">The holding.</param>
    /// <param name="channels">The probes in the bath; one at least.</param>
    /// <param name="bathKelvin">The bath lies within ± so much of 0 °C, K.</param>
    public static Procedure Of(PileSettings settings, IReadOnlyList<Channel> channels, double bathKelvin = UsualBathKelvin) => new(
        "ice", "Calibrate at the ice point",
        ["Water and ice stay away from plugs and boards. A heap probe that is out leaves the heap less well watched: put it back the same day.", Moves.FrostCaution],
        [
            new("ready", $"Fill a bucket with crushed ice, top up with clean water, stir. Put in: {Wording.All(channels.Select(channel => Wording.Probe(settings, channel)))}, a hand deep, not touching the wall. Then go on.") { Moves = Moves.AllOff(settings), Asks = true, MostSeconds = Bath.SetUpSeconds },
            Bath.Phase(settings, "Stir now and then. It ends by itself when the readings have rested for three minutes.", ChannelTable.Of(Channel.Supply).Quantum, looks => channels.Select(channel => Series.Of(looks, channel))),
        ],
        trace => [.. channels.Select(channel => Judge(trace["steady"], settings, channel, bathKelvin))]);

    private static Outcome Judge(PhaseTrace steady, PileSettings settings, Channel channel, double bathKelvin)
    {
        string name = ChannelTable.Of(channel).Name;
        Series rested = Series.Of(Series.Last(steady.Since, Bath.RestSeconds), channel);
        if (!Bath.Rests(rested, ChannelTable.Of(channel).Quantum))
        {
            return new Outcome(name, Soundness.Failed, rested.Count < 3
                ? $"{Wording.Probe(settings, channel)} gave no readings in the bath."
                : $"{Wording.Probe(settings, channel)} did not come to rest within {Bath.LongestSeconds / 60:0} min (it still moves by {Wording.Kelvin(rested.Drift)} in three). More ice, more stirring, a longer stay.");
        }

        double offset = Fitted.OffsetKelvin(settings, channel) - rested.Mean;
        double uncertainty = Bath.Uncertainty(rested, [channel], bathKelvin);
        string found = $"{Wording.Probe(settings, channel)} says {Wording.Kelvin(rested.Mean)} in ice: offset {Wording.Kelvin(offset)}, {Wording.PlusMinus(uncertainty)}";
        if (Math.Abs(offset) > Fitted.MostOffsetKelvin)
        {
            return new Outcome(name, Soundness.Failed, $"{found}. That is no calibration but a fault: probe, wiring, or not in the ice.") { Figure = offset, Unit = "K", Uncertainty = uncertainty };
        }

        bool withinPart = Math.Abs(offset) <= PartLimitKelvin + uncertainty;
        return new Outcome(name, withinPart ? Soundness.Sound : Soundness.Doubtful, withinPart
            ? $"{found}."
            : $"{found}. That is more than the {PartLimitKelvin} K such a probe may be off: make sure it was in the ice, or take another.")
        {
            Figure = offset,
            Unit = "K",
            Uncertainty = uncertainty,
            Adopt = [Fitted.OffsetLine(channel, offset)],
        };
    }
}
