using PileController.Control.Readings;
using PileController.Settings;

namespace PileController.Commissioning.Procedures;

/// <summary>
/// Supply and return in one bucket: the heat is reckoned from their difference, so that they agree matters more than that
/// either is right.
/// </summary>
internal static class ProbePair
{
    // How far two probes side by side in stirred water may differ in truth, K (common practice, no source).
    private const double BucketKelvin = 0.03;

    // Two probes each within 0.5 °C of the truth (SEN-020, DS18B20 data sheet rev 042208) differ by 1 K at most.
    private const double MostApartKelvin = 1;

    // A difference of half of that is usual (common practice, no source).
    private const double UsualApartKelvin = 0.5;

    /// <summary>The test; both probes must be fitted.</summary>
    public static Procedure Of(PileSettings settings) => new(
        "pair", "Pair supply and return",
        ["Lukewarm water is enough: hot water scalds, and it does not stay even."],
        [
            new("ready", "Fill a bucket with water about as warm as the room. Tie the two probes together, metal to metal, and hang them in its middle. Stir, then go on.") { Asks = true },
            Bath.Phase("Stir now and then. It ends by itself when their difference has rested for three minutes.", 2 * ChannelTable.Of(Channel.Supply).Quantum, looks => [Series.Difference(looks, Channel.Supply, Channel.Return)]),
        ],
        trace => [Judge(trace["steady"], settings)]);

    private static Outcome Judge(PhaseTrace steady, PileSettings settings)
    {
        Series apart = Series.Difference(Series.Last(steady.Since, Bath.RestSeconds), Channel.Supply, Channel.Return);
        if (!Bath.Rests(apart, 2 * ChannelTable.Of(Channel.Supply).Quantum))
        {
            return new Outcome("return", Soundness.Failed, apart.Count < 3
                ? "Supply and return did not both give readings in the bucket."
                : "The difference of supply and return did not come to rest: tie them closer together and stir.");
        }

        double uncertainty = Bath.Uncertainty(apart, [Channel.Supply, Channel.Return], BucketKelvin);
        double offset = Fitted.OffsetKelvin(settings, Channel.Return) + apart.Mean;
        string found = $"Supply says {Wording.Kelvin(apart.Mean)} more than return in the same water, {Wording.PlusMinus(uncertainty)}";
        Soundness verdict = Math.Abs(apart.Mean) <= UsualApartKelvin ? Soundness.Sound
            : Math.Abs(apart.Mean) <= MostApartKelvin ? Soundness.Doubtful : Soundness.Failed;
        return new Outcome("return", verdict, verdict switch
        {
            Soundness.Sound => $"{found}; with {Wording.Kelvin(offset)} as the offset of return they agree.",
            Soundness.Doubtful => $"{found}; an offset of {Wording.Kelvin(offset)} for return makes them agree, but they are further apart than usual: try the ice point on both.",
            _ => $"{found}: one of the two is faulty, or they were not in the same water.",
        })
        {
            Figure = apart.Mean,
            Unit = "K",
            Uncertainty = uncertainty,
            Adopt = verdict == Soundness.Failed || Math.Abs(offset) > Fitted.MostOffsetKelvin ? [] : [Fitted.OffsetLine(Channel.Return, offset)],
        };
    }
}
