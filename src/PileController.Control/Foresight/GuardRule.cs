using PileController.Control.Interlocks;

namespace PileController.Control.Foresight;

/// <summary>
/// What the frost guard may come to take: the house is lived through the hours ahead with nothing drawn for it, and from
/// when the tank has gone cold the heat is reckoned that the guard then draws. As long as the tank is warm a flush of its
/// water now and then keeps the lines, however cold the house. The means keep so much back while it is cold, and give it
/// free as soon as milder hours are in sight.
/// </summary>
public static class GuardRule
{
    // A tank that a draw has left warm keeps the lines for about a day; what the guard needs comes after that.
    private const int Hours = 48;

    // The guard ends so far above where it begins, K: tank water colder than that cannot end it.
    private static readonly double EndKelvin = InterlockTable.All[InterlockTable.IndexOf("lineFrost")].ReleaseBand;

    // Of what a pipe would give that stands at the temperature at which the guard begins, so much has to be in store. The
    // guard's water goes into the pipe warm and gives about twice that; but a joule taken at the turns lowers the hottest half
    // by little more than half of what the means reckon for it (both from seasons of the simulated heap).
    private const double GivenShare = 1.2;

    private const double HourSeconds = 3600;

    /// <summary>The need as of this tick: found anew as often as the horizon looks.</summary>
    /// <param name="settings">What the controller is told.</param>
    /// <param name="before">What the tick before handed on.</param>
    /// <param name="weather">What was learned of the air outside.</param>
    /// <param name="house">What was learned of the house.</param>
    /// <param name="forecast">A forecast, or null.</param>
    /// <param name="at">Now.</param>
    public static GuardNeed Step(
        ControlSettings settings, in GuardNeed before, in WeatherMemory weather, in HouseMemory house, Forecast? forecast, in Instant at)
    {
        ArgumentNullException.ThrowIfNull(settings);
        long since = before.LookedAtMonotonicMilliseconds;
        if (settings.Policy != DrawPolicy.Means || (since >= 0 && at.MonotonicMilliseconds - since < Horizon.SolveSeconds * 1000))
        {
            return before;
        }

        Span<double> outsideC = stackalloc double[Hours];
        Span<double> gainW = stackalloc double[Hours];
        Outlook.Fill(settings, weather, house, forecast, at, outsideC, gainW);
        double joules = Joules(HouseModel.Of(settings, house), house.State, outsideC, gainW, settings.Limits.LineFrostC);
        return new GuardNeed(joules, at.MonotonicMilliseconds);
    }

    /// <summary>
    /// Heat that has to be in store so that the guard never lacks it, J. What the heap makes meanwhile is not set against it:
    /// after a hard draw that goes to the chilled bed round the turns, and the hottest half falls on all the same.
    /// </summary>
    /// <param name="house">The house.</param>
    /// <param name="now">How it stands.</param>
    /// <param name="outsideC">Air outside in each hour, °C.</param>
    /// <param name="gainW">What the house gains beyond draw in each hour, W; as long as <paramref name="outsideC"/>.</param>
    /// <param name="lineFrostC">Line water at which the guard begins, °C.</param>
    internal static double Joules(
        in HouseModel house, in HouseState now, ReadOnlySpan<double> outsideC, ReadOnlySpan<double> gainW, double lineFrostC)
    {
        HouseState state = now;
        double givenWPerK = GivenShare * (house.PipeWPerK + house.TankWPerK);
        double joules = 0;
        for (int h = 0; h < outsideC.Length; h++)
        {
            HouseState idle = house.Step(state, HourSeconds, outsideC[h], gainW[h], 0, 0);
            double watts = idle.TankC < lineFrostC + EndKelvin ? givenWPerK * Math.Max(0, lineFrostC - idle.AirC) : 0;
            state = watts > 0 ? house.Step(state, HourSeconds, outsideC[h], gainW[h], 0, watts) : idle;
            joules += watts * HourSeconds;
        }

        return joules;
    }
}
