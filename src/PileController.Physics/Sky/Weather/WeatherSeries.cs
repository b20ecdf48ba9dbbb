namespace PileController.Physics.Sky.Weather;

/// <summary>
/// Weather hour by hour: plain data, ready to be asked for any instant between its first and its last hour. Values are rounded
/// (0.01 °C, 0.1 W/m², 0.01 m/s, 0.001 of humidity, 1 Pa), so that no last bit of a computation can enter a simulation.
/// </summary>
public sealed class WeatherSeries
{
    internal const long HourMilliseconds = 3_600_000;

    private const long DayMilliseconds = 24 * HourMilliseconds;

    private readonly double[] _outsideC;
    private readonly double[] _sunWPerM2;
    private readonly double[] _windMPerS;
    private readonly double[] _humidity;
    private readonly double[] _pressurePa;
    private readonly bool _goesRound;

    internal WeatherSeries(HourGrid grid, WeatherOrigins origins, IReadOnlyList<WeatherGap> gaps)
    {
        FirstHourUtcMilliseconds = grid.FirstUtcMilliseconds;
        _outsideC = Rounded(grid.OutsideC, 100);
        _sunWPerM2 = Rounded(grid.SunWPerM2, 10);
        _windMPerS = Rounded(grid.WindMPerS, 100);
        _humidity = Rounded(grid.Humidity, 1000);
        _pressurePa = Rounded(grid.PressurePa, 1);
        Origins = origins;
        Gaps = gaps;
    }

    private WeatherSeries(WeatherSeries like, double[] outsideC, bool goesRound)
    {
        _goesRound = goesRound;
        FirstHourUtcMilliseconds = like.FirstHourUtcMilliseconds;
        _outsideC = outsideC;
        _sunWPerM2 = like._sunWPerM2;
        _windMPerS = like._windMPerS;
        _humidity = like._humidity;
        _pressurePa = like._pressurePa;
        Origins = like.Origins;
        Gaps = like.Gaps;
    }

    private WeatherSeries(WeatherSeries once)
    {
        FirstHourUtcMilliseconds = once.FirstHourUtcMilliseconds;
        _outsideC = [.. once._outsideC, .. once._outsideC];
        _sunWPerM2 = [.. once._sunWPerM2, .. once._sunWPerM2];
        _windMPerS = [.. once._windMPerS, .. once._windMPerS];
        _humidity = [.. once._humidity, .. once._humidity];
        _pressurePa = [.. once._pressurePa, .. once._pressurePa];
        Origins = once.Origins;
        Gaps = once.Gaps;
    }

    /// <summary>Instant of the first hour, ms since 1970-01-01 UTC.</summary>
    public long FirstHourUtcMilliseconds { get; }

    /// <summary>Air at each hour, °C.</summary>
    public IReadOnlyList<double> OutsideC => _outsideC;

    /// <summary>Sun on level ground at each hour, W/m².</summary>
    public IReadOnlyList<double> SunWPerM2 => _sunWPerM2;

    /// <summary>Wind at each hour, m/s.</summary>
    public IReadOnlyList<double> WindMPerS => _windMPerS;

    /// <summary>Relative humidity at each hour, fraction.</summary>
    public IReadOnlyList<double> Humidity => _humidity;

    /// <summary>Pressure at each hour, Pa.</summary>
    public IReadOnlyList<double> PressurePa => _pressurePa;

    /// <summary>Which quantities were measured, spread, estimated or assumed.</summary>
    public WeatherOrigins Origins { get; }

    /// <summary>Every span the file left out, with how it was bridged.</summary>
    public IReadOnlyList<WeatherGap> Gaps { get; }

    /// <summary>First instant covered, ms since 1970-01-01 UTC.</summary>
    public long CoversFrom => FirstHourUtcMilliseconds;

    /// <summary>Last instant covered, ms since 1970-01-01 UTC.</summary>
    public long CoversTo => FirstHourUtcMilliseconds + ((_outsideC.Length - 1) * HourMilliseconds);

    /// <summary>The same weather, all hours warmer or colder; sun, wind and relative humidity stay.</summary>
    /// <param name="kelvin">How much warmer, K.</param>
    public WeatherSeries Warmer(double kelvin) => new(this, Rounded([.. _outsideC.Select(t => t + kelvin)], 100), _goesRound);

    /// <summary>
    /// The same weather, which begins again where it ends, at the same hour of the day: for a holding that is left
    /// running for longer than its weather. <see cref="CoversTo"/> stays the end of what is known.
    /// </summary>
    public WeatherSeries GoingRound() => new(this, _outsideC, goesRound: true);

    /// <summary>
    /// The same hours twice, one after the other: a typical year has no year before or after it, so a winter in it
    /// runs on from its December into its January.
    /// </summary>
    public WeatherSeries Twice() => new(this);

    /// <summary>Weather at an instant, straight between the hours.</summary>
    /// <param name="utcMilliseconds">Instant, ms since 1970-01-01 UTC, from <see cref="CoversFrom"/> to <see cref="CoversTo"/>, or later where it goes round.</param>
    /// <exception cref="ArgumentOutOfRangeException">The series does not cover that instant.</exception>
    public WeatherSample At(long utcMilliseconds)
    {
        if (_goesRound && utcMilliseconds > CoversTo && CoversTo - CoversFrom >= DayMilliseconds)
        {
            long wholeDays = (CoversTo - CoversFrom) / DayMilliseconds * DayMilliseconds;
            utcMilliseconds = CoversFrom + ((utcMilliseconds - CoversFrom) % wholeDays);
        }

        if (utcMilliseconds < CoversFrom || utcMilliseconds > CoversTo)
        {
            throw new ArgumentOutOfRangeException(
                nameof(utcMilliseconds),
                utcMilliseconds,
                $"The weather runs from {Text(CoversFrom)} to {Text(CoversTo)}; asked for {Text(utcMilliseconds)}.");
        }

        long since = utcMilliseconds - FirstHourUtcMilliseconds;
        int hour = Math.Min((int)(since / HourMilliseconds), Math.Max(0, _outsideC.Length - 2));
        int next = Math.Min(hour + 1, _outsideC.Length - 1);
        double share = (since - (hour * HourMilliseconds)) / (double)HourMilliseconds;
        return new WeatherSample(
            Between(_outsideC, hour, next, share),
            Between(_sunWPerM2, hour, next, share),
            Between(_windMPerS, hour, next, share),
            Between(_humidity, hour, next, share),
            Between(_pressurePa, hour, next, share));
    }

    private static double Between(double[] values, int hour, int next, double share) =>
        values[hour] + (share * (values[next] - values[hour]));

    private static double[] Rounded(double[] values, double perUnit) => [.. values.Select(value => Math.Round(value * perUnit) / perUnit)];

    private static string Text(long utcMilliseconds) =>
        utcMilliseconds is > -60_000_000_000_000 and < 250_000_000_000_000
            ? DateTimeOffset.FromUnixTimeMilliseconds(utcMilliseconds).ToString("yyyy-MM-dd HH:mm 'UTC'")
            : $"{utcMilliseconds} ms";
}
