using System.Globalization;
using PileController.Settings;

namespace PileController.Commissioning.Procedures;

/// <summary>The flow meter against a bucket, over several runs.</summary>
internal static class BucketMeter
{
    /// <summary>How well a bucket is read, ± L (common practice, no source).</summary>
    public const double UsualReadingLitres = 0.1;

    // Water still runs a little after the pump is off, and its last pulses are counted a tick later.
    private const double StillSeconds = 30;

    // Bounds of what is good enough (common practice, no source): the meter of a heat meter of class 3 may be off by 5 %
    // (EN 1434-1, from memory).
    private const double GoodShare = 0.03;
    private const double PoorShare = 0.1;
    private const double StrayShare = 0.05;

    /// <summary>The test; a flow meter must be fitted.</summary>
    /// <param name="settings">The holding.</param>
    /// <param name="runs">How often the bucket is filled, 2 to 10.</param>
    /// <param name="fillSeconds">How long the pump fills it, s.</param>
    /// <param name="readingLitres">How well the bucket is read, ± L.</param>
    public static Procedure Of(PileSettings settings, int runs = 3, double fillSeconds = 120, double readingLitres = UsualReadingLitres) => new(
        "bucket", "Bucket test of the flow meter",
        [
            "The water may be hot enough to scald: gloves, and the hose's end tied fast.",
            "Keep the water that comes back topped up: a pump that runs dry is damaged within minutes. Keep mains parts dry.",
        ],
        [.. Enumerable.Range(1, runs).SelectMany(run => Run(settings, run, runs, fillSeconds))],
        trace => [Judge(trace, settings, runs, readingLitres)]);

    private static IEnumerable<Phase> Run(PileSettings settings, int run, int runs, double fillSeconds)
    {
        yield return new Phase($"empty-{run}", $"Run {run} of {runs}. Lead the hose behind the meter into an empty bucket that holds a good ten litres. Then go on: the pump starts by itself.")
        {
            Moves = Moves.Rest(settings),
            Asks = true,
            MostSeconds = 1800,
        };
        yield return new Phase($"fill-{run}", "The pump runs. Let all the water go into the bucket; it stops by itself.") { Moves = Moves.Run(settings, 1), LeastSeconds = fillSeconds };
        yield return new Phase($"still-{run}", "The pump is off. Let the hose run out.") { Moves = Moves.Rest(settings), LeastSeconds = StillSeconds };
        yield return new Phase($"read-{run}", "Read the bucket on level ground.")
        {
            Moves = Moves.Rest(settings),
            Asks = true,
            MostSeconds = 1800,
            Question = Question.Number("How many litres are in the bucket?", "L", 0.5, 1000),
        };
    }

    private static Outcome Judge(Trace trace, PileSettings settings, int runs, double readingLitres)
    {
        List<double> shares = [];
        List<double> buckets = [];
        for (int run = 1; run <= runs; run++)
        {
            double bucket = trace[$"read-{run}"].Figure!.Value;
            if (trace.Litres($"fill-{run}", $"still-{run}") is not { } metered || metered <= 0)
            {
                return new Outcome("flowMeter", Soundness.Failed, $"Run {run}: the bucket holds {Wording.Number(bucket)} L and the meter counted nothing. Look at its wiring, supply and direction.");
            }

            shares.Add(metered / bucket);
            buckets.Add(bucket);
        }

        double mean = shares.Average();
        double deviation = shares.Count < 2 ? 0 : Math.Sqrt(shares.Sum(share => (share - mean) * (share - mean)) / (shares.Count - 1));
        double uncertainty = Uncertain.Expanded(Uncertain.OfMean(deviation, shares.Count) / mean, Uncertain.Within(readingLitres / buckets.Average()));
        double pulses = settings.Rig.PulsesPerLitre * mean;
        bool strays = shares.Any(share => Math.Abs((share / mean) - 1) > StrayShare);
        Soundness verdict = uncertainty > PoorShare ? Soundness.Failed : uncertainty > GoodShare || strays ? Soundness.Doubtful : Soundness.Sound;
        string found = $"{Wording.Number(pulses)} pulses a litre, ± {Wording.Share(uncertainty)}, over {runs} runs (it was told {Wording.Number(settings.Rig.PulsesPerLitre)}; it read {Wording.Share(Math.Abs(mean - 1))} too {(mean > 1 ? "much" : "little")})";
        return new Outcome("flowMeter", verdict, verdict switch
        {
            Soundness.Sound => $"{found}.",
            Soundness.Doubtful when strays => $"{found}; the runs differ by more than {Wording.Share(StrayShare)}: air in the line, or a bucket read askew. Do it again.",
            Soundness.Doubtful => $"{found}: a larger bucket or more runs would tell it better.",
            _ => $"{found}: that is too wide to be of use. A larger bucket, more runs, no air.",
        })
        {
            Figure = pulses,
            Unit = "1/L",
            Uncertainty = uncertainty * pulses,
            Adopt = verdict == Soundness.Failed ? [] : [new SettingsLine("rig.pulsesPerLitre", string.Create(CultureInfo.InvariantCulture, $"\"{pulses:0.0} 1/L\""), FromPage: true)],
        };
    }
}
