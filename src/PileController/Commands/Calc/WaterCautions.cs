namespace PileController.Commands.Calc;

/// <summary>What can hurt people about the water that a sum tells of.</summary>
internal static class WaterCautions
{
    private const string Trades = "local codes and licensed trades decide";

    // Water from 48 °C on burns within minutes; Legionella grows in still water from 25 to 45 °C (both from memory).
    private const double ScaldC = 48;
    private const double GrowthFromC = 25;

    /// <summary>For water of a temperature: scalding, or growth while it stands.</summary>
    public static string Warm(double waterC) => waterC switch
    {
        >= ScaldC => $"water this hot scalds: mix it down before hands can reach it; {Trades}",
        >= GrowthFromC => $"warm water that stands lets Legionella grow: a closed loop, never for drinking or spraying; {Trades}",
        _ => $"a closed loop, never for drinking or spraying; {Trades}",
    };

    /// <summary>For a line that frost can reach.</summary>
    public static string Frost => $"frost bursts lines: bury them below it, drain them back or keep the water moving; {Trades}";

    /// <summary>For a pump and its supply.</summary>
    public static string Pump => $"electricity beside water: extra-low voltage, fused at the battery, mains behind residual-current protection; {Trades}";
}
