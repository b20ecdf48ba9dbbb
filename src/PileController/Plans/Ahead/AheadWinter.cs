using PileController.Physics.Sky.Weather;

namespace PileController.Plans.Ahead;

/// <summary>One winter of a weather file, wholly covered.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Start">First day.</param>
/// <param name="StartUtcMilliseconds">Its local midnight, ms since 1970-01-01T00:00Z.</param>
/// <param name="Weather">The weather it lies in.</param>
internal sealed record AheadWinter(string File, DateOnly Start, long StartUtcMilliseconds, WeatherSeries Weather);
