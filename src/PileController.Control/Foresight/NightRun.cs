using PileController.Control.Means;

namespace PileController.Control.Foresight;

/// <summary>Lives the hours up to a morning ahead of time, in the house's own model.</summary>
internal readonly ref struct NightRun
{
    /// <summary>Most hours up to a morning.</summary>
    public const int MostHours = 25;

    private const long StepMilliseconds = 30 * 60_000;

    private readonly ControlSettings _settings;
    private readonly HouseModel _model;
    private readonly HouseState _start;
    private readonly NightDraw _draw;
    private readonly Instant _at;
    private readonly long _until;
    private readonly ReadOnlySpan<double> _outsideC;
    private readonly ReadOnlySpan<double> _sigmaK;
    private readonly ReadOnlySpan<double> _gainW;

    public NightRun(
        ControlSettings settings, in HouseMemory house, in NightDraw draw, in Instant at, long untilUtcMilliseconds,
        ReadOnlySpan<double> outsideC, ReadOnlySpan<double> sigmaK, ReadOnlySpan<double> gainW)
    {
        _settings = settings;
        _model = HouseModel.Of(settings, house);
        _start = house.State;
        _draw = draw;
        _at = at;
        _until = untilUtcMilliseconds;
        _outsideC = outsideC;
        _sigmaK = sigmaK;
        _gainW = gainW;
    }

    /// <summary>The least air of the house, when that is, and when the air first falls below a line.</summary>
    internal readonly record struct Night(double LeastC, long LeastUtcMilliseconds, long? BelowUtcMilliseconds);

    /// <summary>The least air of one night, and what it would be with what is granted for comfort alone.</summary>
    /// <param name="sigmas">By how many standard errors the air outside is warmer than the outlook.</param>
    public NightLeast Least(double sigmas) => new(Live(sigmas, double.NegativeInfinity).LeastC, IdleC(sigmas));

    /// <summary>The least air of one night with what is granted for comfort alone, °C.</summary>
    /// <param name="sigmas">By how many standard errors the air outside is warmer than the outlook.</param>
    public double IdleC(double sigmas) => Run(sigmas, double.NegativeInfinity, 0, long.MaxValue, false).LeastC;

    /// <summary>One night.</summary>
    /// <param name="sigmas">By how many standard errors the air outside is warmer than the outlook.</param>
    /// <param name="lineC">The line, °C.</param>
    /// <param name="heaterW">Heat of a heater, W.</param>
    /// <param name="heaterFrom">From when on it runs, ms since 1970-01-01T00:00Z; what is colder in its first hour does not count.</param>
    public Night Live(double sigmas, double lineC, double heaterW = 0, long heaterFrom = long.MaxValue) =>
        Run(sigmas, lineC, heaterW, heaterFrom, true);

    private Night Run(double sigmas, double lineC, double heaterW, long heaterFrom, bool againstFrost)
    {
        HouseState state = _start;
        double meansW = _draw.MeansW;
        double spending = NightDraw.SpendingSeconds;
        long counts = heaterFrom == long.MaxValue ? _at.UtcMilliseconds : Math.Min(heaterFrom + HourClock.Milliseconds, _until - StepMilliseconds);
        Night night = new(counts <= _at.UtcMilliseconds ? state.AirC : double.PositiveInfinity, _at.UtcMilliseconds, state.AirC < lineC ? _at.UtcMilliseconds : null);
        long first = HourClock.Of(_at);
        for (long now = _at.UtcMilliseconds; now < _until; now += StepMilliseconds)
        {
            Instant moment = _at with { UtcMilliseconds = now };
            int hour = (int)Math.Min(HourClock.Of(moment) - first, _outsideC.Length - 1);
            double outside = _outsideC[hour] + (sigmas * _sigmaK[hour]);
            double seconds = Math.Min(StepMilliseconds, _until - now) * 0.001;

            double heater = now >= heaterFrom ? heaterW : 0;
            double frost = againstFrost ? Frost(state, seconds, outside, _gainW[hour], heater) : 0;
            (double water, double air) = _draw.At(_settings, meansW, frost, state.AirC, outside, moment.LocalHour);
            meansW = Math.Max(0, meansW - ((water + air - _draw.NetW) * seconds / spending));
            state = _model.Step(state, seconds, outside, _gainW[hour], water, air + heater);
            long end = now + (long)(seconds * 1000);
            if (end < counts)
            {
                continue;
            }

            night = new Night(
                Math.Min(night.LeastC, state.AirC), state.AirC < night.LeastC ? end : night.LeastUtcMilliseconds,
                night.BelowUtcMilliseconds ?? (state.AirC < lineC ? end : null));
        }

        return night;
    }

    // The tick asks many times in a step, each time the less the nearer the house has come to what is wished: what is asked
    // through the whole step is what is still asked at its end.
    private double Frost(in HouseState state, double seconds, double outsideC, double gainW, double heaterW)
    {
        double idle = WantRule.FrostWatts(_settings, _model.Step(state, seconds, outsideC, gainW, 0, heaterW).AirC, outsideC);
        if (idle <= 0)
        {
            return 0;
        }

        double water = Math.Min(idle, _draw.WaterReachW);
        double air = Math.Min(idle - water, _draw.AirReachW);
        double met = WantRule.FrostWatts(_settings, _model.Step(state, seconds, outsideC, gainW, water, air + heaterW).AirC, outsideC);
        return idle * (water + air) / Math.Max(1, water + air + idle - met);
    }
}
