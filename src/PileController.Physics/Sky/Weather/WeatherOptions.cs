namespace PileController.Physics.Sky.Weather;

/// <summary>What to take where a weather file is silent.</summary>
public sealed record WeatherOptions
{
    /// <summary>Hargreaves' coefficient for sun estimated from temperature, K^−½ (0.1 to 0.25; 0.16 inland, 0.19 near a coast).</summary>
    public double HargreavesCoefficient { get; init; } = Sunshine.InlandCoefficient;

    /// <summary>Relative humidity where there is none, fraction (0 to 1).</summary>
    public double AssumedHumidity { get; init; } = 0.8;

    /// <summary>Wind where there is none, m/s (0 to 40).</summary>
    public double AssumedWindMPerS { get; init; } = 2;

    /// <summary>Longest gap that is bridged (and reported), h (0 to 168); a longer one makes the file unusable.</summary>
    public int LongestBridgeHours { get; init; } = 48;

    internal WeatherOptions Checked()
    {
        Require.Within(HargreavesCoefficient, 0.1, 0.25, "K^-½");
        Require.Within(AssumedHumidity, 0, 1, "(fraction)");
        Require.Within(AssumedWindMPerS, 0, 40, "m/s");
        Require.Within(LongestBridgeHours, 0, 168, "h");
        return this;
    }
}
