namespace PileController.Physics.Sky.Weather;

/// <summary>Finds missing days, draws short gaps straight and reports every one.</summary>
internal sealed class DayBridge(DateOnly firstDate, Place place, WeatherOptions options, WeatherFaults faults)
{
    private readonly List<WeatherGap> _gaps = [];

    public IReadOnlyList<WeatherGap> Gaps => _gaps;

    public void Fill(double[] values, string quantity)
    {
        for (int from = 0; from < values.Length; from++)
        {
            if (!double.IsNaN(values[from]))
            {
                continue;
            }

            int before = from;
            while (before < values.Length && double.IsNaN(values[before]))
            {
                before++;
            }

            bool inside = from > 0 && before < values.Length;
            var gap = new WeatherGap(quantity, Midnight(from), Midnight(before), "drawn straight between the days beside it");
            if (!inside || (before - from) * 24 > options.LongestBridgeHours)
            {
                faults.File($"{(gap with { Bridge = "" }).Sentence} Gaps up to {options.LongestBridgeHours} h between days that are there are bridged.");
            }
            else
            {
                _gaps.Add(gap);
                double step = (values[before] - values[from - 1]) / (before - from + 1);
                for (int i = from; i < before; i++)
                {
                    values[i] = values[from - 1] + (step * (i - from + 1));
                }
            }

            from = before;
        }
    }

    private DateTimeOffset Midnight(int day) => new(firstDate.AddDays(day).ToDateTime(TimeOnly.MinValue), place.UtcOffset);
}
