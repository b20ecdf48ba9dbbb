namespace PileController.Control.Foresight;

/// <summary>What is remembered of tonight: the newest statement, how cold the house has been since the evening, what was learned.</summary>
/// <param name="Hour">The hour the newest statement was made in, since 1970-01-01T00:00Z; -1 before the first.</param>
/// <param name="LeastC">Least air of the house since the evening, °C.</param>
/// <param name="Heated">Whether backup heat has run or the house probe failed since: such a night teaches nothing.</param>
/// <param name="Latest">The newest statement, or null.</param>
/// <param name="ToldUntilUtcMilliseconds">The morning of the last night the grower was warned of, ms since 1970-01-01T00:00Z.</param>
/// <param name="Learned">What was learned.</param>
public readonly record struct TonightMemory(
    long Hour, double LeastC, bool Heated, Tonight? Latest, long ToldUntilUtcMilliseconds, TonightLearned Learned)
{
    private const long MostAheadMilliseconds = 25 * HourClock.Milliseconds;

    // How far the least is from being one before a night has begun, °C.
    private const double NoneC = 1000;

    /// <summary>Nothing said yet.</summary>
    public static TonightMemory Fresh => new(-1, NoneC, true, null, 0, TonightLearned.Fresh);

    /// <summary>Takes in one tick; a statement is made at its first tick of an hour.</summary>
    /// <param name="settings">What was told of the house.</param>
    /// <param name="memory">What the tick before handed on, that of house and weather already of this tick.</param>
    /// <param name="house">What is remembered of the house.</param>
    /// <param name="weather">What is remembered of the air outside.</param>
    /// <param name="forecast">A forecast, or null.</param>
    /// <param name="draw">What the heap is taken to give.</param>
    /// <param name="houseC">Air of the house, °C; null when its probe cannot be believed.</param>
    /// <param name="backupRan">Whether backup heat ran.</param>
    /// <param name="at">Now.</param>
    /// <returns>The next memory, and whether the grower is to be warned now.</returns>
    internal static (TonightMemory Memory, bool Tell) Step(
        ControlSettings settings, in TonightMemory memory, in HouseMemory house, in WeatherMemory weather, Forecast? forecast,
        in NightDraw draw, double? houseC, bool backupRan, in Instant at)
    {
        bool heated = memory.Heated || backupRan || houseC is null;
        double least = Math.Min(memory.LeastC, houseC ?? memory.LeastC);
        long hour = HourClock.Of(at);
        if (hour == memory.Hour)
        {
            return (memory with { LeastC = least, Heated = heated }, false);
        }

        TonightLearned learned = memory.Learned;
        if (learned.Due is { } odd && odd.UntilUtcMilliseconds > at.UtcMilliseconds + MostAheadMilliseconds)
        {
            // It was made by a clock that has been set back since.
            learned = learned with { Due = null };
        }

        if (learned.Due is { } due && at.UtcMilliseconds >= due.UntilUtcMilliseconds)
        {
            // A clock that jumped, a long gap: nothing is known of the night.
            bool whole = !heated && at.UtcMilliseconds < due.UntilUtcMilliseconds + HourClock.Milliseconds;
            learned = whole ? learned.After(least, settings.HouseMinimumC) : learned with { Due = null };
        }

        Tonight said = Tonight.Of(settings, house, weather, forecast, learned, draw, at);
        bool evening = HourClock.Local(hour, at.OffsetMinutes) == Tonight.EveningHour && learned.Due is null;
        bool tell = evening && said.Poor && said.UntilUtcMilliseconds != memory.ToldUntilUtcMilliseconds;
        return (new TonightMemory(
            hour, evening ? houseC ?? NoneC : least, evening ? houseC is null : heated, said,
            tell ? said.UntilUtcMilliseconds : memory.ToldUntilUtcMilliseconds, evening ? learned with { Due = said, DueCloserK = draw.CloserKelvin } : learned), tell);
    }

    /// <summary>What is kept over a restart: nobody saw the house meanwhile, so the night at hand teaches nothing.</summary>
    internal TonightMemory AfterRestart() => this with { Hour = -1, Heated = true };
}
