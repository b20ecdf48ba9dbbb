using System.Globalization;

namespace PileController.Physics.Sky.Weather;

/// <summary>What one row of an EPW file says; NaN where it carries the form's mark for "missing".</summary>
internal readonly record struct EpwRow(long Instant, double OutsideC, double Humidity, double PressurePa, double SunWPerM2, double WindMPerS)
{
    public static EpwRow Parse(string[] cells, int line, int year, TimeSpan utcOffset, WeatherFaults faults)
    {
        double Cell(int index, string name, double lowest, double highest, double missingFrom, string unit)
        {
            if (double.TryParse(cells[index], NumberStyles.Float, CultureInfo.InvariantCulture, out double value))
            {
                if (value >= missingFrom)
                {
                    return double.NaN;
                }

                if (value >= lowest && value <= highest)
                {
                    return value;
                }
            }

            faults.Cell(line, name, cells[index], $"{lowest} to {highest} {unit}, or {missingFrom} for missing");
            return double.NaN;
        }

        return new EpwRow(
            InstantOf(cells, line, year, utcOffset, faults),
            Cell(6, "dry bulb", -90, 60, 99.9, "°C"),
            Math.Min(Cell(8, "relative humidity", 0, 110, 999, "%"), 100) / 100,
            Cell(9, "pressure", 30_000, 120_000, 999_999, "Pa"),
            Cell(13, "global horizontal radiation", 0, 1500, 9999, "Wh/m²"),
            Cell(21, "wind speed", 0, 100, 999, "m/s"));
    }

    private static long InstantOf(string[] cells, int line, int year, TimeSpan utcOffset, WeatherFaults faults)
    {
        bool read = int.TryParse(cells[1], out int month) & int.TryParse(cells[2], out int day) & int.TryParse(cells[3], out int hour);
        if (read && year is >= 1900 and <= 2200 && month is >= 1 and <= 12 && hour is >= 1 and <= 24
            && day >= 1 && day <= DateTime.DaysInMonth(year, month))
        {
            return new DateTimeOffset(year, month, day, 0, 0, 0, utcOffset).ToUnixTimeMilliseconds() + (hour * WeatherSeries.HourMilliseconds);
        }

        faults.Cell(line, "date", string.Join('-', cells.Take(4)), $"a month, a day of it in {year} and an hour from 1 to 24");
        return long.MaxValue;
    }
}
