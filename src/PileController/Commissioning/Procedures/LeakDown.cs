using PileController.Control.Readings;
using PileController.Settings;

namespace PileController.Commissioning.Procedures;

/// <summary>The loop stands full, and must lose nothing.</summary>
internal static class LeakDown
{
    /// <summary>How long it stands when nothing is told, min (common practice, no source).</summary>
    public const double UsualMinutes = 30;

    // How well a mark is read, ± mm, and what falls may be let pass (common practice, no source).
    private const double ReadingMm = 1;
    private const double GoodMm = 2;
    private const double PoorMm = 10;

    // Water shrinks by about 0.3 parts in a thousand a kelvin at 35 °C: a loop that cools by more lowers its own mark.
    private const double CoolingKelvin = 5;

    /// <summary>The test.</summary>
    /// <param name="settings">The holding.</param>
    /// <param name="minutes">How long the loop stands, min.</param>
    public static Procedure Of(PileSettings settings, double minutes = UsualMinutes) => new(
        "leak", "Leak-down",
        ["Do not do it in a frost: standing water freezes. The frost guard outranks the test and ends it."],
        [
            new("mark", "Fill the loop, vent it, and mark the water's height on sight glass or tank. Then go on.") { Moves = Moves.Rest(settings), Asks = true, MostSeconds = 3600 },
            new("stand", $"Everything stands for {Wording.Number(minutes)} min. Walk along the lines: a dry paper round each joint shows what the mark does not.") { Moves = Moves.Rest(settings), LeastSeconds = 60 * minutes },
            new("fall", "Look at the mark again.") { Moves = Moves.Rest(settings), Asks = true, MostSeconds = 3600, Question = Question.Number("By how many millimetres has the water fallen?", "mm", 0, 2000) },
        ],
        trace => [Judge(trace, minutes)]);

    private static Outcome Judge(Trace trace, double minutes)
    {
        IReadOnlyList<Look> looks = [.. trace["stand"].Since, .. trace["fall"].Looks];
        double fallMm = trace["fall"].Figure!.Value;
        string stood = $"In {Wording.Number(minutes)} min the water fell by {Wording.Number(fallMm)} mm (± {Wording.Number(Uncertain.Expanded(Uncertain.Within(ReadingMm)))} mm)";
        Outcome Said(Soundness verdict, string sentence) => new("loop", verdict, sentence) { Figure = fallMm, Unit = "mm", Uncertainty = Uncertain.Expanded(Uncertain.Within(ReadingMm)) };
        if (looks.Any(look => look.Of(Channel.Leak) >= 0.5))
        {
            return Said(Soundness.Failed, $"{stood}, and the leak switch went wet.");
        }

        if (looks.Any(look => look.Of(Channel.Level) < 0.5))
        {
            return Said(Soundness.Failed, $"{stood}, and the tank's level switch fell below its mark.");
        }

        if (fallMm > PoorMm)
        {
            return Said(Soundness.Failed, $"{stood}: the loop leaks. Dry paper round each joint shows where.");
        }

        double cooled = -Series.Of(looks, Channel.Supply).Drift;
        return fallMm > GoodMm ? Said(Soundness.Doubtful, $"{stood}: it may leak. Do it again over a night that stays above freezing.")
            : cooled > CoolingKelvin ? Said(Soundness.Doubtful, $"{stood}, but the water cooled by {Wording.Kelvin(cooled)}, which moves the mark by itself. Do it again at an even temperature.")
            : Said(Soundness.Sound, $"{stood}; no switch told of a leak.");
    }
}
