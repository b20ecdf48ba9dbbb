namespace PileController.Control.Foresight;

/// <summary>What is meant to be drawn in the hours ahead, and the house that is expected of it. Not changed after it was made.</summary>
/// <param name="MadeAtMonotonicMilliseconds">When it was made, on the monotonic clock.</param>
/// <param name="FromUtcMilliseconds">Begin of its first hour, ms since 1970-01-01T00:00Z.</param>
/// <param name="HouseC">House air at the end of each hour, °C.</param>
/// <param name="WaterW">Heat by water in each hour, W.</param>
/// <param name="AirW">Heat by air in each hour, W.</param>
public sealed record HorizonPlan(
    long MadeAtMonotonicMilliseconds, long FromUtcMilliseconds, double[] HouseC, double[] WaterW, double[] AirW);
