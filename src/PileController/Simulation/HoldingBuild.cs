using PileController.Physics.Plants;
using PileController.Physics.Sky;
using PileController.Settings;

namespace PileController.Simulation;

/// <summary>What the settings say of plant and place.</summary>
internal static class HoldingBuild
{
    public static PlantBuild Plant(PileSettings settings) => new(settings.Heap, settings.House, settings.Loop, settings.Power);

    /// <summary>Where the holding lies. Weather files are in standard time, so the offset is that of midwinter.</summary>
    public static Place Place(PileSettings settings) => new(
        settings.Site.LatitudeDegrees, settings.Site.LongitudeDegrees, TimeSpan.FromMinutes(StandardOffsetMinutes(settings)));

    /// <summary>Local standard time minus UTC, minutes: the smaller of the offsets in January and July.</summary>
    public static int StandardOffsetMinutes(PileSettings settings)
    {
        long january = new DateTimeOffset(2026, 1, 15, 0, 0, 0, TimeSpan.Zero).ToUnixTimeMilliseconds();
        long july = new DateTimeOffset(2026, 7, 15, 0, 0, 0, TimeSpan.Zero).ToUnixTimeMilliseconds();
        return Math.Min(settings.Site.OffsetMinutesAt(january), settings.Site.OffsetMinutesAt(july));
    }
}
