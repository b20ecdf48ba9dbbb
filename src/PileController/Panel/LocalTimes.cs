namespace PileController.Panel;

/// <summary>Local wall times as text.</summary>
internal static class LocalTimes
{
    /// <summary>ISO 8601 with the offset, to the second.</summary>
    public static string Text(long utcMilliseconds, int offsetMinutes) =>
        DateTimeOffset.FromUnixTimeMilliseconds(utcMilliseconds).ToOffset(TimeSpan.FromMinutes(offsetMinutes)).ToString("yyyy-MM-dd'T'HH:mm:sszzz");
}
