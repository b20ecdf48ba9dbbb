namespace PileController.Control.Foresight;

/// <summary>What hours of the house have taught. Not changed after it was made; a new one is made at the end of an hour.</summary>
public sealed record HouseLearned
{
    // How fast it learns: the loss in some nights, the sun in some days, what is left over in five days.
    private const double LossRate = 0.03;
    private const double SunRate = 0.05;
    private const double GainRate = 0.2;

    // A night warmer outside than in teaches nothing of the loss, K.
    private const double LeastDifferenceK = 3;

    // What one hour may teach at most, W: a door left open is no property of the house.
    private const double MostResidualW = 1500;
    private const double BrightWPerM2 = 200;

    // Night without asking the sun.
    private const int NightFrom = 20;
    private const int NightTo = 5;

    /// <summary>What the loss told is to be multiplied by, 0.5 to 2.</summary>
    public double LossFactor { get; init; } = 1;

    /// <summary>What the sun told is to be multiplied by, 0.2 to 2.</summary>
    public double SunFactor { get; init; } = 1;

    /// <summary>Heat the house gains beyond model and draw, by local hour of day, W: the sun of the last days above all.</summary>
    public double[] GainW { get; init; } = new double[24];

    /// <summary>How many hours were learned from.</summary>
    public int Hours { get; init; }

    /// <summary>Nothing learned.</summary>
    public static HouseLearned Fresh { get; } = new();

    /// <summary>Takes in what an hour lacked.</summary>
    /// <param name="settings">What was told of the house.</param>
    /// <param name="localHour">Local hour of day, 0 to 23.</param>
    /// <param name="differenceK">House air less air outside, K.</param>
    /// <param name="sunWPerM2">Sunshine, W/m²; null when not known.</param>
    /// <param name="gainW">The gain the model was run with, W.</param>
    /// <param name="residualW">What the house had besides, W.</param>
    internal HouseLearned After(
        ControlSettings settings, int localHour, double differenceK, double? sunWPerM2, double gainW, double residualW)
    {
        double residual = Math.Clamp(residualW, -MostResidualW, MostResidualW);
        bool night = sunWPerM2 is { } dark ? dark < 1 : localHour is >= NightFrom or < NightTo;
        double loss = LossFactor;
        if (night && differenceK >= LeastDifferenceK)
        {
            // All that is left over at night counts as loss; what the gain of that hour holds of it, too.
            loss = Math.Clamp(loss - (LossRate * (gainW + residual) / (settings.HouseLossWPerK * differenceK)), 0.5, 2);
        }

        double sun = SunFactor;
        double clear = sunWPerM2 is { } shone ? shone * settings.House.SunM2 : 0;
        if (clear > HouseModel.CurtainWPerM2 * settings.House.SunM2)
        {
            double rate = SunRate * Math.Min(1, sunWPerM2!.Value / BrightWPerM2);
            sun = Math.Clamp(sun + (rate * (((gainW + residual) / clear) - sun)), 0.2, 2);
        }

        double[] gains = (double[])GainW.Clone();
        double share = Math.Max(GainRate, 1.0 / (1 + (Hours / 24)));
        double seen = gains[localHour] + (share * (gainW + residual - gains[localHour]));
        // A gain at night above the curtain's threshold would open it in the model and so justify itself.
        gains[localHour] = night ? Math.Min(seen, 0.9 * HouseModel.CurtainWPerM2 * settings.House.SunM2) : seen;
        return new HouseLearned { LossFactor = loss, SunFactor = sun, GainW = gains, Hours = Hours + 1 };
    }
}
