using PileController.Control.Readings;
using PileController.Settings;

namespace PileController.Commissioning.Procedures;

/// <summary>The pump drives the air out: the flow steadies, and supply stops to flicker.</summary>
internal static class AirPurge
{
    // A minute of looks that stay within this is a steady flow (common practice, no source).
    private const double SteadyShare = 0.02;
    private const double SteadySeconds = 60;

    // Noise of a sound supply probe: a step or two of its grain (common practice, no source).
    private const double QuietQuanta = 2;

    private const double LeastSeconds = 180;
    private const double MostSeconds = 1200;

    /// <summary>The test; a flow meter must be fitted.</summary>
    public static Procedure Of(PileSettings settings) => new(
        "purge", "Purge the air",
        ["Vents spit hot water: gloves, and a cloth over each. Open one at a time, the highest last.", "Keep the tank topped up: air that leaves makes room."],
        [
            new("ready", "Fill the loop until no bubbles come at the highest vent. Then go on: the pump starts by itself.") { Moves = Moves.Rest(settings), Asks = true, MostSeconds = 3600 },
            new("purge", "The pump runs at full duty. Vent the high points; it ends by itself once the flow is steady.")
            {
                Moves = Moves.Run(settings, 1),
                LeastSeconds = LeastSeconds,
                MostSeconds = MostSeconds,
                Enough = looks => Spread(Series.Last(looks, SteadySeconds)) <= SteadyShare && Noise(Series.Last(looks, SteadySeconds)) <= Quiet,
            },
        ],
        trace => [Judge(trace["purge"].Since)]);

    private static double Quiet => QuietQuanta * ChannelTable.Of(Channel.Supply).Quantum;

    private static Outcome Judge(IReadOnlyList<Look> looks)
    {
        IReadOnlyList<Look> end = Series.Last(looks, SteadySeconds);
        IReadOnlyList<Look> begin = [.. looks.Skip(1).TakeWhile(look => look.Seconds <= looks[0].Seconds + SteadySeconds)];
        double spread = Spread(end);
        if (double.IsInfinity(spread))
        {
            return new Outcome("loop", Soundness.Failed, "No water moved: the loop is air-locked, shut, or the pump does not turn.");
        }

        string found = $"The flow is {Wording.Number(Series.Of(end, Channel.Flow).Mean, 2)} L/min and wanders by {Wording.Share(spread)} ({(double.IsInfinity(Spread(begin)) ? "none" : Wording.Share(Spread(begin)))} in the first minute); supply flickers by {Wording.Kelvin(Noise(end))} ({Wording.Kelvin(Noise(begin))} then)";
        Soundness verdict = spread > SteadyShare ? Soundness.Failed : Noise(end) > Quiet ? Soundness.Doubtful : Soundness.Sound;
        return new Outcome("loop", verdict, verdict switch
        {
            Soundness.Sound => $"{found}: the air is out.",
            Soundness.Doubtful => $"{found}: the flow is steady, but supply still flickers. Let it run on and look again.",
            _ => $"{found}: there is still air in it after {MostSeconds / 60:0} min. Vent the high points and look for a joint that draws air.",
        })
        {
            Figure = 100 * spread,
            Unit = "%",
        };
    }

    // Spread of the flow as a share of its mean; infinity where nothing flows or nothing is read.
    private static double Spread(IReadOnlyList<Look> looks)
    {
        Series flow = Series.Of(looks, Channel.Flow);
        return flow is { Count: >= 3, Mean: > 0.05 } ? flow.Deviation / flow.Mean : double.PositiveInfinity;
    }

    private static double Noise(IReadOnlyList<Look> looks) => Series.Of(looks, Channel.Supply).Noise;
}
