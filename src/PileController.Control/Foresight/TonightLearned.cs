namespace PileController.Control.Foresight;

/// <summary>What earlier statements of the evening have taught, and the one that is not due yet. Not changed after it was made.</summary>
public sealed record TonightLearned
{
    private const double Rate = 1.0 / 15;
    private const double MostBiasK = 3;
    private const double LeastSpread2 = 0.3;
    private const double MostSpread2 = 3;
    private const double LeastOwnK2 = 0.0025;
    private const double MostOwnK2 = 1;

    // One night that went quite otherwise (a door, a trip) must not teach too much.
    private const double MostErrorK = 5;
    private const double MostSquare = 6;

    // The rig's own swing is much the same every night and soon known; what dips further was not held.
    private const double HoldRate = 1.0 / 10;
    private const double HoldDipK = 0.1;
    private const double MostOwnErrorK = 0.75;

    // The probe answers late, rounds, and does not hang in the coldest corner (common practice, no source).
    private const double ProbeK2 = 0.15 * 0.15;

    // Where colder air hardly makes the house colder the heap keeps the frost out; such a night tells of the model's own
    // error and not of the weather's.
    private const double HeldK = 0.6;

    /// <summary>By how much nights came out as if the air outside had been warmer than foretold, K, −3 to 3.</summary>
    public double BiasK { get; init; }

    /// <summary>
    /// How far above its minimum the house's coldest moment lies in nights through which the heap holds it, K, −0.1 to 1. In a
    /// night in which it is held closer than usual it lies so much lower; see <see cref="Course.CloserKelvin"/>.
    /// </summary>
    public double HoldK { get; init; } = 0.4;

    /// <summary>Mean square of what such nights differ by, K², 0.0025 to 1.</summary>
    public double HoldK2 { get; init; } = 0.04;

    /// <summary>What the square of the weather's standard error is to be multiplied by, 0.3 to 3.</summary>
    public double Spread2 { get; init; } = 1;

    /// <summary>Mean square of the error that weather does not explain in nights in which the rig does not hold the house, K², 0.0025 to 1.</summary>
    public double OwnK2 { get; init; } = 0.09;

    /// <summary>How many were learned from.</summary>
    public int Nights { get; init; }

    /// <summary>The evening's statement, until its morning has come; or null.</summary>
    public Tonight? Due { get; init; }

    /// <summary>How much closer to its minimum than usual the house was held when <see cref="Due"/> was said, K, 0 to 0.5.</summary>
    public double DueCloserK { get; init; }

    /// <summary>Nothing learned.</summary>
    public static TonightLearned Fresh { get; } = new();

    /// <summary>
    /// What a night is expected to come to: as the model has it, or, where the house would become colder than the rig holds it
    /// and the heap suffices, what such nights have come to. Pump and pipes answer late, and the house swings by more than the
    /// model knows.
    /// </summary>
    /// <param name="night">The model's night.</param>
    /// <param name="minimumC">The house's minimum, °C.</param>
    /// <param name="closerK">How much closer to it than usual the house is held, K.</param>
    internal double LeastC(in NightLeast night, double minimumC, double closerK = 0) =>
        Math.Min(night.DrawnC, Math.Max(HeldC(minimumC, closerK), night.IdleC));

    /// <summary>Mean square of what the night may differ by for reasons other than the weather, K².</summary>
    /// <param name="night">The model's night.</param>
    /// <param name="minimumC">The house's minimum, °C.</param>
    /// <param name="closerK">How much closer to it than usual the house is held, K.</param>
    internal double Own2(in NightLeast night, double minimumC, double closerK = 0)
    {
        double held = HeldC(minimumC, closerK);
        return night.DrawnC >= held && night.IdleC < held ? HoldK2 + ProbeK2 : OwnK2;
    }

    /// <summary>
    /// Chance that the house stays at its minimum or above in such a night: the heap must suffice, and the rig hold or the house
    /// need no holding.
    /// </summary>
    /// <param name="night">The model's night.</param>
    /// <param name="minimumC">The house's minimum, °C.</param>
    /// <param name="closerK">How much closer to it than usual the house is held, K.</param>
    internal double Chance(in NightLeast night, double minimumC, double closerK = 0)
    {
        double own = Math.Sqrt(OwnK2);
        double holds = Math.Max(
            Bell.Below((HoldK - closerK) / Math.Sqrt(HoldK2 + ProbeK2)), Bell.Below((night.IdleC - minimumC) / own));
        return Math.Min(Bell.Below((night.DrawnC - minimumC) / own), holds);
    }

    /// <summary>Takes in what came.</summary>
    /// <param name="leastC">Least air of the house since the evening, °C.</param>
    /// <param name="minimumC">The house's minimum, °C.</param>
    internal TonightLearned After(double leastC, double minimumC)
    {
        if (Due is not { } said)
        {
            return this;
        }

        TonightLearned next = (IsHeld(said, leastC, minimumC) ? HeldAt(leastC - minimumC + DueCloserK) : this) with { Nights = Nights + 1, Due = null };
        double error = Math.Clamp(leastC - said.MinimumP50C, -MostErrorK, MostErrorK);
        double side = Math.Max(0, error < 0 ? said.ColderK : said.WarmerK);
        if (side < HeldK)
        {
            return said.MinimumP50C >= HeldC(minimumC, DueCloserK) ? next : next with { OwnK2 = Own2After(error, side) };
        }

        double square = Math.Min(MostSquare, error * error / ((side * side) + OwnK2));
        return next with
        {
            BiasK = Math.Clamp(BiasK + (Rate * error * said.OutsideSigmaK / side), -MostBiasK, MostBiasK),
            Spread2 = Math.Clamp(Spread2 * (1 + (Rate * (square - 1))), LeastSpread2, MostSpread2),
        };
    }

    private double HeldC(double minimumC, double closerK) => minimumC + HoldK - closerK;

    // It would not have stood so high by itself, and was not colder than a rig that holds lets it become.
    private bool IsHeld(Tonight said, double leastC, double minimumC)
    {
        double aboveK = leastC - minimumC + DueCloserK;
        return said.MinimumP50C <= HeldC(minimumC, DueCloserK) && aboveK > -HoldDipK && aboveK < Course.UsualHeadKelvin;
    }

    private TonightLearned HeldAt(double aboveK)
    {
        double off = aboveK - HoldK;
        return this with
        {
            HoldK = HoldK + (HoldRate * off),
            HoldK2 = Math.Clamp(HoldK2 + (HoldRate * ((off * off) - HoldK2)), LeastOwnK2, MostOwnK2),
        };
    }

    private double Own2After(double errorK, double sideK)
    {
        double own = Math.Clamp(errorK, -MostOwnErrorK, MostOwnErrorK);
        return Math.Clamp(OwnK2 + (Rate * ((own * own) - (sideK * sideK) - OwnK2)), LeastOwnK2, MostOwnK2);
    }
}
