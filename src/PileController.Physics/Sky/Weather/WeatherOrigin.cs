namespace PileController.Physics.Sky.Weather;

/// <summary>Where the numbers of one quantity come from.</summary>
public enum WeatherOrigin
{
    /// <summary>Read from the file hour by hour.</summary>
    Measured,

    /// <summary>Spread over the day from daily values in the file.</summary>
    SpreadFromDaily,

    /// <summary>Estimated from another quantity (sun from the day's span of temperature).</summary>
    Estimated,

    /// <summary>Not in the file: one constant taken for all hours.</summary>
    Assumed,
}
