using PileController.Control.Decisions;
using PileController.Control.Readings;

namespace PileController.Control.Interlocks;

/// <summary>Finds the signals of a tick. NaN stands for a source that cannot be believed; it never leaves this room.</summary>
internal static class Signals
{
    public const int Count = (int)Signal.ActiveZone + 1;
    private const double SilentWatts = 0.5;

    // Air warmer than this freezes no line; half a kelvin for the probe.
    private const double FrostPossibleC = 0.5;

    public static void Fill(
        Span<double> signals, ControlSettings settings, RigReadings readings, in Outputs running, double activeZoneC, ReportTick? report)
    {
        signals[(int)Signal.Leak] = Switch(readings[Channel.Leak]);
        signals[(int)Signal.LevelMissing] = readings[Channel.Level].Quality == ReadingQuality.NotFitted
            ? 0
            : 1 - Switch(readings[Channel.Level]);

        bool pumpOn = running.PumpDuty > 0;
        bool flowKnown = readings.TryGet(Channel.Flow, out double flow);
        bool powerKnown = readings.TryGet(Channel.PumpPower, out double power);
        double limit = settings.Limits.NoFlowLitresPerMinute;
        signals[(int)Signal.NoFlow] = !pumpOn ? 0
            : flowKnown ? Bit(flow < limit)
            : powerKnown ? Bit(power < SilentWatts) : double.NaN;
        signals[(int)Signal.PumpSilent] = pumpOn && powerKnown ? Bit(power < SilentWatts) : 0;
        signals[(int)Signal.FlowWhileOff] = flowKnown && !pumpOn ? Bit(flow > limit) : 0;
        signals[(int)Signal.Supply] = Fitted(readings, Channel.Supply, double.NegativeInfinity);
        signals[(int)Signal.House] = Fitted(readings, Channel.House, double.NegativeInfinity);
        signals[(int)Signal.ColdestLine] = ColdestLine(readings);
        double hottest = HottestHeap(readings);
        signals[(int)Signal.HottestHeap] = Hotter(hottest, readings);
        signals[(int)Signal.Battery] = Fitted(readings, Channel.Battery, double.PositiveInfinity);
        signals[(int)Signal.HeapBlind] = Bit(double.IsNaN(hottest));
        signals[(int)Signal.HouseBlind] = Bit(!readings[Channel.House].IsGood);
        signals[(int)Signal.StoreFailing] = report is { StoreFailing: true } ? 1 : 0;
        signals[(int)Signal.ClockJump] = report is null ? 0 : Math.Abs(report.ClockJumpMilliseconds * 0.001);
        signals[(int)Signal.TickLate] = report is null ? 0 : report.LateMilliseconds * 0.001;
        signals[(int)Signal.Restarts] = report?.Restarts ?? 0;
        signals[(int)Signal.CarbonDioxide] = Fitted(readings, Channel.CarbonDioxide, double.NegativeInfinity);
        signals[(int)Signal.ActiveZone] = activeZoneC;
    }

    private static double Bit(bool value) => value ? 1 : 0;

    private static double Switch(Reading reading) =>
        reading.Quality == ReadingQuality.NotFitted ? 0 : reading.IsGood ? reading.Quanta : double.NaN;

    private static double Fitted(RigReadings readings, Channel channel, double without) =>
        readings[channel].Quality == ReadingQuality.NotFitted ? without
        : readings.TryGet(channel, out double value) ? value : double.NaN;

    private static double ColdestLine(RigReadings readings)
    {
        bool outsideKnown = readings.TryGet(Channel.Outside, out double outside);
        if (outsideKnown && outside > FrostPossibleC)
        {
            return double.PositiveInfinity;
        }

        bool supplyKnown = readings.TryGet(Channel.Supply, out double supply);
        bool returnKnown = readings.TryGet(Channel.Return, out double back);
        return supplyKnown && returnKnown ? Math.Min(supply, back)
            : supplyKnown ? supply
            : returnKnown ? back
            : outsideKnown ? outside : double.NaN;
    }

    // A burning heap leaves the range of a sound probe and the company of its neighbours: for the fire watch such a
    // reading counts where it is the hotter one.
    private static double Hotter(double hottest, RigReadings readings)
    {
        for (Channel channel = Channel.HeapCore; channel <= Channel.HeapEdge; channel++)
        {
            Reading reading = readings[channel];
            if (reading.Quality is ReadingQuality.OutOfRange or ReadingQuality.Disagrees && reading.Quanta > 0)
            {
                double value = reading.ValueOf(channel);
                hottest = double.IsNaN(hottest) ? value : Math.Max(hottest, value);
            }
        }

        return hottest;
    }

    private static double HottestHeap(RigReadings readings)
    {
        double hottest = double.NaN;
        for (Channel channel = Channel.HeapCore; channel <= Channel.HeapEdge; channel++)
        {
            // The edge alone says nothing of the heart.
            if (readings.TryGet(channel, out double value) && (channel != Channel.HeapEdge || !double.IsNaN(hottest)))
            {
                hottest = double.IsNaN(hottest) ? value : Math.Max(hottest, value);
            }
        }

        return hottest;
    }
}
