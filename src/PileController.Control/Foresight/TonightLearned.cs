namespace PileController.Control.Foresight;

/// <summary>What earlier statements of the evening have taught, and the one that is not due yet. Not changed after it was made.</summary>
public sealed record TonightLearned
{
    private const double Rate = 1.0 / 15;
    private const double MostBiasK = 3;
    private const double LeastSpread2 = 0.3;
    private const double MostSpread2 = 3;
    private const double LeastOwnK2 = 0.01;
    private const double MostOwnK2 = 1;

    // One night that went quite otherwise (a door, a trip) must not teach too much.
    private const double MostErrorK = 5;
    private const double MostSquare = 6;

    // Where colder air hardly makes the house colder the heap keeps the frost out; such a night tells of the model's own
    // error and not of the weather's.
    private const double HeldK = 0.6;

    /// <summary>By how much nights came out as if the air outside had been warmer than foretold, K, −3 to 3.</summary>
    public double BiasK { get; init; }

    /// <summary>What the square of the weather's standard error is to be multiplied by, 0.3 to 3.</summary>
    public double Spread2 { get; init; } = 1;

    /// <summary>Mean square of the error that weather does not explain, K², 0.01 to 1.</summary>
    public double OwnK2 { get; init; } = 0.09;

    /// <summary>How many were learned from.</summary>
    public int Nights { get; init; }

    /// <summary>The evening's statement, until its morning has come; or null.</summary>
    public Tonight? Due { get; init; }

    /// <summary>Nothing learned.</summary>
    public static TonightLearned Fresh { get; } = new();

    /// <summary>Takes in what came.</summary>
    /// <param name="leastC">Least air of the house since the evening, °C.</param>
    internal TonightLearned After(double leastC)
    {
        if (Due is not { } said)
        {
            return this;
        }

        double error = Math.Clamp(leastC - said.MinimumP50C, -MostErrorK, MostErrorK);
        double side = Math.Max(0, error < 0 ? said.ColderK : said.WarmerK);
        TonightLearned next = new() { BiasK = BiasK, Spread2 = Spread2, OwnK2 = OwnK2, Nights = Nights + 1 };
        if (side < HeldK)
        {
            return next with { OwnK2 = Math.Clamp(OwnK2 + (Rate * ((error * error) - (side * side) - OwnK2)), LeastOwnK2, MostOwnK2) };
        }

        double square = Math.Min(MostSquare, error * error / ((side * side) + OwnK2));
        return next with
        {
            BiasK = Math.Clamp(BiasK + (Rate * error * said.OutsideSigmaK / side), -MostBiasK, MostBiasK),
            Spread2 = Math.Clamp(Spread2 * (1 + (Rate * (square - 1))), LeastSpread2, MostSpread2),
        };
    }
}
