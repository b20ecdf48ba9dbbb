using PileController.Control.Modes;
using PileController.Control.Readings;

namespace PileController.Control.Decisions.Wording;

/// <summary>The first sentence: what is done and why.</summary>
internal static class ModeWords
{
    public static string Of(Decision decision, Figures figures) => decision.Mode switch
    {
        Mode.Standby => StandbyWords.Of(decision, figures),
        Mode.Priming => $"Filling the loop and proving its flow before heat is drawn: {figures.Flow(decision.Draw.FlowLitresPerMinute)} so far.",
        Mode.Drawing => DrawingWords.Of(decision, figures),
        Mode.Recovering => Recovering(decision, figures),
        Mode.FrostGuard => FrostGuard(decision, figures),
        Mode.ByHand => ByHand(decision, figures),
        Mode.Servicing => "Work on the rig: all outputs are locked off until it is ended.",
        _ => "All is stopped.",
    };

    /// <summary>"the house stands at 6.1 °C", or that its probe is not believed.</summary>
    public static string House(Decision decision, Figures figures) =>
        decision.Readings.TryGet(Channel.House, out double house)
            ? $"the house stands at {figures.Celsius(house)}"
            : "the house's temperature is not known";

    /// <summary>"the house stands at 6.1 °C and wants 1 900 W".</summary>
    public static string Wants(Decision decision, Figures figures)
    {
        string stands = decision.Readings[Channel.House].IsGood ? House(decision, figures) : "the house is taken to stand at its minimum";
        return $"{stands} and wants {figures.Watts(decision.WantWatts)}";
    }

    /// <summary>"the heap can bear 1 240 W and stay above 45 °C".</summary>
    public static string Bears(Decision decision, Figures figures)
    {
        string draw = decision.MeansWatts > 0 ? figures.Watts(decision.MeansWatts) : "no draw";
        return $"the heap can bear {draw} and stay above {figures.Celsius(decision.HeapFloorCelsius)}";
    }

    private static string Recovering(Decision decision, Figures figures)
    {
        HeapEstimate estimate = decision.Estimate;
        string stands = $"Leaving the heap to recover: it stands at {figures.Celsius(estimate.ActiveZoneCelsius)} "
            + $"over a floor of {figures.Celsius(decision.HeapFloorCelsius)}";
        string bears = decision.MeansWatts > 0
            ? $"can bear {figures.Watts(decision.MeansWatts)} so far"
            : estimate.GenerationWatts < 0
                ? $"loses {figures.Watts(-estimate.GenerationWatts)} by itself, so it can bear no draw"
                : "can bear no draw";
        return $"{stands} and {bears}; {House(decision, figures)}.";
    }

    private static string FrostGuard(Decision decision, Figures figures)
    {
        bool supplyKnown = decision.Readings.TryGet(Channel.Supply, out double supply);
        bool returnKnown = decision.Readings.TryGet(Channel.Return, out double back);
        string line = supplyKnown || returnKnown
            ? $"the colder line reads {figures.Celsius(!returnKnown || (supplyKnown && supply < back) ? supply : back)}"
            : "no line probe can be believed";
        return $"Guarding the lines from frost: water is moved slowly, at {Figures.Share(decision.Outputs.PumpDuty)} of the pump, because {line}.";
    }

    private static string ByHand(Decision decision, Figures figures) =>
        $"Run by hand: pump at {Figures.Share(decision.Outputs.PumpDuty)}, valve {Figures.Share(decision.Outputs.ValveOpening)} open, "
        + $"blower at {Figures.Share(decision.Outputs.BlowerDuty)}; the water brings {figures.Watts(decision.Draw.WaterWatts)} "
        + $"and {House(decision, figures)}.";
}
