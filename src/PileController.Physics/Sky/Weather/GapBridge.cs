namespace PileController.Physics.Sky.Weather;

/// <summary>Finds gaps in an hourly array, fills the short ones and reports every one.</summary>
internal sealed class GapBridge(HourGrid grid, Place place, WeatherOptions options, WeatherFaults faults)
{
    // A straight line over more than this would cut off a morning or an evening.
    private const int LongestStraight = 6;
    private const int Day = 24;

    private readonly List<WeatherGap> _gaps = [];

    public IReadOnlyList<WeatherGap> Gaps => _gaps;

    public void Fill(double[] values, string quantity, bool followsTheSun = false)
    {
        for (int from = 0; from < values.Length; from++)
        {
            if (double.IsNaN(values[from]))
            {
                int before = from;
                while (before < values.Length && double.IsNaN(values[before]))
                {
                    before++;
                }

                Fill(values, from, before, quantity, followsTheSun);
                from = before;
            }
        }
    }

    private void Fill(double[] values, int from, int before, string quantity, bool followsTheSun)
    {
        int length = before - from;
        bool straight = length <= LongestStraight && !(followsTheSun && from >= Day);
        if (length > options.LongestBridgeHours || (!straight && from < Day))
        {
            WeatherGap gap = Gap(from, before, quantity, "");
            faults.File($"{gap.Sentence} Gaps up to {options.LongestBridgeHours} h are bridged, after the first day.");
            return;
        }

        _gaps.Add(Gap(from, before, quantity, straight ? "drawn straight between its neighbours" : "the same hours of the day before taken"));
        for (int i = from; i < before; i++)
        {
            values[i] = straight ? Straight(values, from, before, i) : values[i - Day];
        }
    }

    private static double Straight(double[] values, int from, int before, int at)
    {
        double left = from > 0 ? values[from - 1] : values[before];
        double right = before < values.Length ? values[before] : left;
        return left + ((right - left) * (at - from + 1) / (before - from + 1));
    }

    private WeatherGap Gap(int from, int before, string quantity, string bridge) => new(quantity, Local(from), Local(before), bridge);

    private DateTimeOffset Local(int hour) => DateTimeOffset.FromUnixTimeMilliseconds(grid.Instant(hour)).ToOffset(place.UtcOffset);
}
