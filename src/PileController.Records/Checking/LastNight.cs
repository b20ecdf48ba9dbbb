using PileController.Control;
using PileController.Records.Queries;

namespace PileController.Records.Checking;

/// <summary>The last night of a record.</summary>
internal static class LastNight
{
    private const int EveningHour = 18;

    // The hour until which the house is looked after at night: the controller's own statement ends there too.
    private const int MorningHour = 9;

    /// <summary>From the evening of the day before the last tick to the morning after, in local time.</summary>
    public static TimeRange Before(Instant last)
    {
        TimeSpan offset = TimeSpan.FromMinutes(last.OffsetMinutes);
        DateTimeOffset midnight = new(
            DateTimeOffset.FromUnixTimeMilliseconds(last.UtcMilliseconds).ToOffset(offset).Date, offset);
        return new TimeRange(
            midnight.AddHours(EveningHour - 24).ToUnixTimeMilliseconds(), midnight.AddHours(MorningHour).ToUnixTimeMilliseconds());
    }
}
