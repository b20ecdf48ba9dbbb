using PileController.Control.Readings;

namespace PileController.Control.Decisions.Wording;

/// <summary>Why nothing is drawn.</summary>
internal static class StandbyWords
{
    public static string Of(Decision decision, Figures figures)
    {
        string house = ModeWords.House(decision, figures);
        string wants = ModeWords.Wants(decision, figures);
        HeapEstimate heap = decision.Estimate;
        return decision.Curb switch
        {
            Curb.NoWant => $"Nothing is drawn: {house}, its set point is {figures.Celsius(decision.HouseSetPointCelsius)}, and it wants no heat.",
            Curb.NotLit => $"Nothing is drawn: the heap has not lit yet and stands at {figures.Celsius(heap.ActiveZoneCelsius)}; {house}.",
            Curb.Floor => $"Nothing is drawn: the bed at the turns stands at {figures.Celsius(heap.TurnsCelsius)} and is left to warm again; {house}.",
            Curb.Power => $"Nothing is drawn, to spare the battery{Volts(decision)}: {wants}.",
            Curb.Interlock => $"Nothing is drawn: an interlock holds it off; {wants}.",
            Curb.Probes => $"Nothing is drawn: too few probes in the heap are believed to give heat for comfort; {house}.",
            _ when decision.GrantWatts > 0 => $"Waiting to draw: {wants}; {figures.Watts(decision.GrantWatts)} is granted"
                + $"{Because(decision, figures)}, and the pump starts when enough of it has gathered and its rest is over.",
            Curb.Means => $"Nothing is drawn: {wants}; {ModeWords.Bears(decision, figures)}.",
            Curb.Saving => $"Nothing is drawn: {wants}; the heap's heat is kept for a colder hour.",
            Curb.Reach => $"Nothing is drawn: {wants}; the bed at the turns, at {figures.Celsius(heap.TurnsCelsius)}, is too cool to give it.",
            Curb.ByHand => $"Nothing is drawn: a person holds it; {house}.",
            _ => $"Nothing is drawn yet: {wants}.",
        };
    }

    private static string Because(Decision decision, Figures figures) => decision.Curb switch
    {
        Curb.Means => $" because the heap can bear no more and stay above {figures.Celsius(decision.HeapFloorCelsius)}",
        Curb.Saving => " and the rest is kept for a colder hour",
        Curb.Reach => " because the turns give no more at this pace",
        _ => "",
    };

    private static string Volts(Decision decision) =>
        decision.Readings.TryGet(Channel.Battery, out double volts)
            ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $" at {volts:0.0} V")
            : "";
}
