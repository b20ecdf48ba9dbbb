namespace PileController.Control.Foresight;

/// <summary>What one hour brought the house so far.</summary>
/// <param name="Hour">Which hour, since 1970-01-01T00:00Z; -1 before the first.</param>
/// <param name="Start">The house at its begin.</param>
/// <param name="StartSeen">Whether its air was read then.</param>
/// <param name="Seconds">Time counted, s.</param>
/// <param name="OutsideKelvinSeconds">Air outside times time, °C·s.</param>
/// <param name="WaterJ">Heat by water, J.</param>
/// <param name="AirJ">Heat by air, J.</param>
/// <param name="SunJPerM2">Sunshine, J/m².</param>
/// <param name="SunSeconds">Time in which it was read, s.</param>
/// <param name="Heated">Whether backup heat ran, whose power nobody tells.</param>
/// <param name="UnseenSeconds">Time in which the air outside was not read or the draw not metered, s.</param>
public readonly record struct HouseTally(
    long Hour, HouseState Start, bool StartSeen, double Seconds, double OutsideKelvinSeconds, double WaterJ, double AirJ,
    double SunJPerM2, double SunSeconds, bool Heated, double UnseenSeconds = 0)
{
    /// <summary>Nothing counted yet.</summary>
    public static HouseTally Fresh => new(-1, default, false, 0, 0, 0, 0, 0, 0, false);
}
