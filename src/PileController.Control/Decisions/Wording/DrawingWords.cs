namespace PileController.Control.Decisions.Wording;

/// <summary>What is drawn, and what keeps it from being more.</summary>
internal static class DrawingWords
{
    // So much more than the grant is worth a word: the least flow takes more than is granted, and rests make up for it.
    private const double WellOver = 1.25;
    private const double WellOverWatts = 100;

    public static string Of(Decision decision, Figures figures)
    {
        string drawn = Drawn(decision, figures);
        string house = ModeWords.House(decision, figures);
        string wants = decision.WantWatts > 0 ? ModeWords.Wants(decision, figures) : house;
        string text = $"{drawn}: {wants}; {Limit(decision, figures)}.";
        double drawnWatts = decision.Draw.WaterWatts + Math.Max(0, decision.Draw.AirWatts);
        bool over = decision.GrantWatts > 0 && drawnWatts > (decision.GrantWatts * WellOver) + WellOverWatts;
        return over
            ? $"{text} It runs and rests by turns, so that the mean meets the grant of {figures.Watts(decision.GrantWatts)}."
            : text;
    }

    private static string Drawn(Decision decision, Figures figures)
    {
        MeteredDraw draw = decision.Draw;
        string about = draw.Inferred ? "about " : "";
        bool water = decision.Outputs.PumpDuty > 0;
        bool air = decision.Outputs.BlowerDuty > 0;
        string byAir = $"{about}{figures.Watts(draw.AirWatts)} by air";
        if (!water)
        {
            return air ? $"Drawing {byAir}" : "Drawing nothing at the moment";
        }

        string byWater = draw.WaterWatts > 0
            ? $"Drawing {about}{figures.Watts(draw.WaterWatts)} by water"
            : "Drawing by water, which brings no heat yet";
        return air ? $"{byWater} and {byAir}" : byWater;
    }

    private static string Limit(Decision decision, Figures figures)
    {
        string floor = figures.Celsius(decision.HeapFloorCelsius);
        string bears = ModeWords.Bears(decision, figures);
        return decision.Curb switch
        {
            Curb.None => "it gets all it wants",
            Curb.NoWant => "it wants no more heat, and the draw ends with its least run time",
            Curb.Means => bears,
            Curb.Saving => $"{bears}, but all beyond {figures.Watts(decision.GrantWatts)} is kept for a colder hour",
            Curb.Reach => $"the turns give no more at this pace, though {bears}",
            Curb.Floor => $"the heap is near its floor of {floor}",
            Curb.Probes => "too few probes in the heap are believed, so heat is given against frost only",
            Curb.Power => "the battery is low, so the water is held off",
            Curb.Interlock => "an interlock holds the water off",
            Curb.Rest => "a least rest time is waited for",
            _ => "the draw is being ended",
        };
    }
}
