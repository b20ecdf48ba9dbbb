namespace PileController.Control.Foresight;

/// <summary>
/// What the frost guard may come to take: the house is lived through the hours ahead with nothing drawn for it, and where
/// the water that stands in its pipes would come near freezing, the heat is reckoned that keeps it from it. The means keep
/// so much back while it is cold, and give it free as soon as milder hours are in sight.
/// </summary>
public static class GuardRule
{
    // A cold spell is seldom told further; what lies beyond it comes into sight as the hours pass.
    private const int Hours = 24;

    // Water that stands takes on the air of the house: near the air at which the guard begins to run.
    private const double HouseC = 1.5;

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
        return new GuardNeed(Joules(HouseModel.Of(settings, house), house.State, outsideC, gainW), at.MonotonicMilliseconds);
    }

    /// <summary>Heat that keeps a house from freezing its pipes, J.</summary>
    /// <param name="house">The house.</param>
    /// <param name="now">How it stands.</param>
    /// <param name="outsideC">Air outside in each hour, °C.</param>
    /// <param name="gainW">What the house gains beyond draw in each hour, W; as long as <paramref name="outsideC"/>.</param>
    internal static double Joules(in HouseModel house, in HouseState now, ReadOnlySpan<double> outsideC, ReadOnlySpan<double> gainW)
    {
        HouseState state = now;
        double joules = 0;
        for (int h = 0; h < outsideC.Length; h++)
        {
            HouseState idle = house.Step(state, HourSeconds, outsideC[h], gainW[h], 0, 0);
            double watts = house.Wanted(HouseC, idle.AirC, HourSeconds);
            state = watts > 0 ? house.Step(state, HourSeconds, outsideC[h], gainW[h], 0, watts) : idle;
            joules += watts * HourSeconds;
        }

        return joules;
    }
}
