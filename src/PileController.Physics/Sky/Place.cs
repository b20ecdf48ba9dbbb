namespace PileController.Physics.Sky;

/// <summary>Where the holding lies and what its clock shows in standard time.</summary>
/// <param name="LatitudeDegrees">Degrees north, −90 to 90.</param>
/// <param name="LongitudeDegrees">Degrees east, −180 to 180 (west is negative).</param>
/// <param name="UtcOffset">Local standard time less UTC, −14 to 14 h; no summer time.</param>
/// <param name="AltitudeM">Height above the sea, m, −500 to 11 000.</param>
public sealed record Place(double LatitudeDegrees, double LongitudeDegrees, TimeSpan UtcOffset, double AltitudeM = 0)
{
    /// <summary>This place once every number has been found in its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">One is not; the message names it, its value and the range.</exception>
    public Place Checked()
    {
        Require.Within(LatitudeDegrees, -90, 90, "degrees");
        Require.Within(LongitudeDegrees, -180, 180, "degrees");
        Require.Within(UtcOffset.TotalHours, -14, 14, "h");
        Require.Within(AltitudeM, -500, 11_000, "m");
        return this;
    }
}
