namespace PileController.Physics.Sky.Weather;

/// <summary>A span the file says nothing about, and how it was bridged.</summary>
/// <param name="Quantity">What is missing, in words.</param>
/// <param name="From">First hour (or day) missing, local standard time.</param>
/// <param name="Before">First hour (or day) there again, local standard time.</param>
/// <param name="Bridge">How it was filled; empty when it was too long to fill.</param>
public sealed record WeatherGap(string Quantity, DateTimeOffset From, DateTimeOffset Before, string Bridge)
{
    /// <summary>The gap in one sentence.</summary>
    public string Sentence => $"{Quantity} missing from {From:yyyy-MM-dd HH:mm} until {Before:yyyy-MM-dd HH:mm}"
        + (Bridge.Length > 0 ? $": {Bridge}." : ".");
}
