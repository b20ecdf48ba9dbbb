using PileController.Control.Readings;
using PileController.Settings;

namespace PileController.Commissioning.Procedures;

/// <summary>Which address hangs where: one probe is warmed in the hand, and the one that moves is it.</summary>
internal static class FindProbe
{
    // A hand is some 30 °C at the palm (from memory); a probe that moves by less was not in it.
    private const double LeastKelvin = 1;

    // The next one must move by a quarter of that at most (common practice, no source).
    private const double Clear = 4;

    // And its own noise must be eight times smaller (common practice, no source).
    private const double OverNoise = 8;

    /// <summary>The test.</summary>
    public static Procedure Of(PileSettings settings) => new(
        "find", "Find a probe",
        ["Pump, valve and blower rest meanwhile, so that nothing but your hand warms a probe."],
        [
            new("rest", "Keep your hands off all probes for a minute: the noise of each is taken.") { Moves = Moves.Rest(settings), LeastSeconds = 60 },
            new("hand", "Take one probe into a warm, dry hand and hold it until you are told.")
            {
                Moves = Moves.Rest(settings),
                LeastSeconds = 60,
                MostSeconds = 240,
                Enough = looks => Ranked(looks, settings) is [var first, .. var others] && first.Kelvin >= 3 && others.All(one => one.Kelvin * Clear <= first.Kelvin),
            },
        ],
        trace => Judge(trace, settings));

    private static IReadOnlyList<Outcome> Judge(Trace trace, PileSettings settings)
    {
        var noise = Fitted.Thermometers(settings).ToDictionary(
            channel => channel, channel => Math.Max(Series.Of(trace["rest"].Since, channel).Noise, ChannelTable.Of(channel).Quantum));
        (Channel Channel, double Kelvin, bool Warmer)[] ranked = Ranked(trace["hand"].Since, settings);
        if (ranked.Length == 0)
        {
            return [new Outcome("probes", Soundness.Failed, "No temperature probe gave readings: look at the bus, its supply and its pull-up resistor.")];
        }

        (Channel first, double kelvin, bool warmer) = ranked[0];
        string name = ChannelTable.Of(first).Name;
        double over = OverNoise * noise[first];
        if (kelvin < LeastKelvin || kelvin < over)
        {
            return [new Outcome("probes", Soundness.Failed, $"No probe moved clearly: the most was {Wording.Kelvin(kelvin)} at {Wording.Probe(settings, first)}. Hold the metal end itself, for two minutes, with warm hands.")];
        }

        (Channel Channel, double Kelvin, bool Warmer)[] rivals = [.. ranked.Skip(1).Where(one => one.Kelvin * Clear > kelvin)];
        double next = ranked.Length > 1 ? ranked[1].Kelvin : 0;
        string moved = $"{Wording.Probe(settings, first)} {(warmer ? "rose" : "fell")} by {Wording.Kelvin(kelvin)}";
        double uncertainty = Uncertain.Expanded(noise[first], Uncertain.Grain(ChannelTable.Of(first).Quantum));
        return
        [
            rivals.Length == 0
                ? new Outcome(name, Soundness.Sound, $"The probe in your hand is {name}: {moved}, every other one by {Wording.Kelvin(next)} at most.") { Figure = kelvin, Unit = "K", Uncertainty = uncertainty }
                : new Outcome(name, Soundness.Doubtful, $"Ambiguous: {moved}, but {Wording.All(rivals.Select(one => $"{Wording.Probe(settings, one.Channel)} by {Wording.Kelvin(one.Kelvin)}"))} as well. Try again with one probe alone and nothing else touched.") { Figure = kelvin, Unit = "K", Uncertainty = uncertainty },
        ];
    }

    // By how far each moved within these looks, most first. One that drifts by itself moves little in a few minutes.
    private static (Channel Channel, double Kelvin, bool Warmer)[] Ranked(IReadOnlyList<Look> looks, PileSettings settings) =>
    [
        .. Fitted.Thermometers(settings)
            .Select(channel => (Channel: channel, Series: Series.Of(looks, channel)))
            .Where(one => one.Series.Count >= 2)
            .Select(one => (one.Channel, Moved: one.Series.Values[^1] - one.Series.Values[0]))
            .Select(one => (one.Channel, Math.Abs(one.Moved), one.Moved > 0))
            .OrderByDescending(one => one.Item2),
    ];
}
