using System.Globalization;
using PileController.Control.Decisions;
using PileController.Settings;

namespace PileController.Commissioning.Procedures;

/// <summary>How long the motor valve takes from end to end, both ways, by the grower's eye on its pointer.</summary>
internal static class ValveTravel
{
    // How late or early a person says so, ± s (common practice, no source).
    private const double ReactionSeconds = 1;

    // Longest travel the settings take, s.
    private const double LongestSeconds = 600;

    // No motor valve of this size is faster (common practice, no source).
    private const double ShortestSeconds = 2;

    // Ways that differ by more than this want a look (common practice, no source).
    private const double UnevenShare = 0.2;

    /// <summary>The test; a motor valve must be fitted.</summary>
    public static Procedure Of(PileSettings settings) => new(
        "travel", "Time the valve",
        ["Keep fingers out of the valve's linkage: it moves with more force than it looks."],
        [
            Way("home", "The valve runs shut. Go on once its pointer stands still.", settings, 0),
            Way("open", "The valve runs open. Go on the moment its pointer stands still.", settings, 1),
            Way("shut", "The valve runs shut. Go on the moment its pointer stands still.", settings, 0),
        ],
        trace => [Judge(trace["open"].Seconds, trace["shut"].Seconds, settings)]);

    private static Phase Way(string id, string say, PileSettings settings, double opening) => new(id, say)
    {
        Moves = Moves.ValveAlone(settings, opening),
        Asks = true,
        MostSeconds = LongestSeconds + 60,
    };

    private static Outcome Judge(double openSeconds, double shutSeconds, PileSettings settings)
    {
        string name = Procedure.WireName(Actuator.Valve);
        double mean = 0.5 * (openSeconds + shutSeconds);
        double uncertainty = Uncertain.Expanded(Uncertain.Within(ReactionSeconds) / Math.Sqrt(2));
        string found = $"The valve opens in {Wording.Number(openSeconds)} s and shuts in {Wording.Number(shutSeconds)} s: {Wording.Number(mean)} s on the mean, ± {Wording.Number(uncertainty)} s (it was told {Wording.Number(settings.Loop.ValveTravelSeconds)} s)";
        if (Math.Min(openSeconds, shutSeconds) < ShortestSeconds || mean > LongestSeconds)
        {
            return new Outcome(name, Soundness.Failed, $"{found}. That is no travel of a motor valve: does it move at all, and did you wait for its end?") { Figure = mean, Unit = "s", Uncertainty = uncertainty };
        }

        bool uneven = Math.Abs(openSeconds - shutSeconds) > (UnevenShare * mean) + uncertainty;
        return new Outcome(name, uneven ? Soundness.Doubtful : Soundness.Sound, uneven ? $"{found}. The two ways differ by more than a fifth: look for a spindle that sticks." : $"{found}.")
        {
            Figure = mean,
            Unit = "s",
            Uncertainty = uncertainty,
            Adopt = [new SettingsLine("loop.valveTravel", string.Create(CultureInfo.InvariantCulture, $"\"{mean:0.0} s\""), FromPage: true)],
        };
    }
}
