namespace PileController.Plans.Ahead;

/// <summary>One figure of a season run in full steps and in planning steps.</summary>
/// <param name="Name">The figure, in camelCase with its unit.</param>
/// <param name="Full">In the controller's own ticks and the plant's usual quick steps.</param>
/// <param name="Planning">In the steps of the season ahead.</param>
internal sealed record TickFigure(string Name, double? Full, double? Planning)
{
    /// <summary>Planning less full, as a share of full; 0 when they are the same, null when one of them never happened or full is 0.</summary>
    public double? ErrorShare => Planning == Full ? 0 : Full == 0 ? null : (Planning - Full) / Full;
}

/// <summary>Says how near seasons in planning steps come to the same seasons in full steps.</summary>
internal static class TickCheck
{
    /// <summary>Runs one season both ways.</summary>
    public static IReadOnlyList<TickFigure> Of(AheadRequest request, int season, CancellationToken cancellation)
    {
        SeasonOutcome full = SeasonAhead.Run(request, season, PlanSteps.Full, cancellation);
        SeasonOutcome plan = SeasonAhead.Run(request, season, PlanSteps.Planning, cancellation);
        TickFigure Row(string name, Func<SeasonOutcome, double?> of) => new(name, of(full), of(plan));
        return
        [
            Row("drawnKWh", o => o.DrawnKWh), Row("usefulKWh", o => o.UsefulKWh), Row("generatedKWh", o => o.GeneratedKWh),
            Row("coldDegreeHours", o => o.ColdDegreeHours), Row("hoursBelowMinimum", o => o.HoursBelowMinimum),
            Row("coldestC", o => o.ColdestC), Row("litOnDay", o => o.LitOnDay), Row("fadedOnDay", o => o.FadedOnDay),
            Row("dryMassLostKg", o => o.DryMassLostKg), Row("waterLostKg", o => o.WaterLostKg), Row("pumpKWh", o => o.PumpKWh),
            Row("blowerKWh", o => o.BlowerKWh),
        ];
    }
}
