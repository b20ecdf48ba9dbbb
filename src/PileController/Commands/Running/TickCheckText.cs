using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Plans.Ahead;

namespace PileController.Commands.Running;

/// <summary>Tells how near the season ahead comes to the same seasons in full steps.</summary>
internal static class TickCheckText
{
    public static void Write(ParseResult parse, AheadRequest request, int seasons, bool json, CancellationToken cancellation)
    {
        for (int season = 0; season < seasons; season++)
        {
            IReadOnlyList<TickFigure> figures = TickCheck.Of(request, season, cancellation);
            AheadWinter winter = request.Winters[season % request.Winters.Count];
            if (json)
            {
                Answer.WriteJson(parse, new { Season = season, winter.File, winter.Start, Figures = figures });
                continue;
            }

            TextWriter output = parse.InvocationConfiguration.Output;
            output.WriteLine($"Season {season}: {winter.File} from {winter.Start:yyyy-MM-dd}");
            output.WriteLine();
            output.WriteLine($"| figure | tick {PlanSteps.Full.TickSeconds:F0} s, quick {PlanSteps.Full.QuickSeconds:F0} s | tick {PlanSteps.Planning.TickSeconds:F0} s, quick {PlanSteps.Planning.QuickSeconds:F0} s | difference |");
            output.WriteLine("| --- | --- | --- | --- |");
            foreach (TickFigure f in figures)
            {
                output.WriteLine($"| {f.Name} | {Number(f.Full)} | {Number(f.Planning)} | {Difference(f)} |");
            }

            output.WriteLine();
        }
    }

    private static string Number(double? value) => value is { } v ? FormattableString.Invariant($"{v:0.###}") : "never";

    // A share of a temperature says nothing: its difference is told in kelvin.
    private static string Difference(TickFigure f) => (f.Full, f.Planning) switch
    {
        ({ } full, { } planning) when f.Name.EndsWith('C') => FormattableString.Invariant($"{planning - full:+0.00;-0.00;0.00} K"),
        ({ }, { }) => FormattableString.Invariant($"{100 * f.ErrorShare:+0.00;-0.00;0.00} %"),
        _ => "–",
    };
}
