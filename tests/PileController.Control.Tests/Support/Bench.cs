using PileController.Control.Decisions;
using PileController.Control.Estimation;
using PileController.Control.Readings;

namespace PileController.Control.Tests.Support;

/// <summary>A controller on a rig that does what it is told: water moves when the pump runs, and nothing stands dead still.</summary>
internal sealed class Bench(ControlSettings? settings = null)
{
    private static readonly Channel[] Live = [.. Enum.GetValues<Channel>().Where(c => ChannelTable.Of(c).StuckAfterMilliseconds > 0)];

    public ControlSettings Settings { get; set; } = settings ?? new ControlSettings();

    public Memory Memory { get; set; } = Memory.Fresh with { Estimator = EstimatorMemory.Fresh with { Lit = true } };

    public RigReadings Readings { get; set; } = Sound.Readings;

    /// <summary>False for a line that is blocked.</summary>
    public bool WaterMoves { get; set; } = true;

    /// <summary>False for a pump whose fuse is blown.</summary>
    public bool PumpTakesPower { get; set; } = true;

    public long Now { get; private set; } = 3_600_000;

    public Decision Last { get; private set; } = null!;

    /// <summary>What the rig says now.</summary>
    public RigReadings Said()
    {
        double duty = Memory.Outputs.PumpDuty;
        RigReadings said = Readings;
        if (said[Channel.Flow].IsGood)
        {
            said = said.With(Channel.Flow, WaterMoves ? duty * Settings.MostFlowLitresPerMinute : 0);
        }

        if (said[Channel.PumpPower].IsGood)
        {
            said = said.With(Channel.PumpPower, PumpTakesPower ? duty * Settings.PumpWatts : 0);
        }

        foreach (Channel channel in Live.Where(channel => Readings[channel].Quality != ReadingQuality.NotFitted))
        {
            said = said.With(channel, said[channel] with { Quanta = said[channel].Quanta + (int)(Memory.Sequence % 2) });
        }

        return said;
    }

    public Decision Tick(params Command[] commands) => TickAfter(Settings.TickSeconds, commands);

    public Decision TickAfter(double seconds, params Command[] commands)
    {
        Now += (long)(seconds * 1000);
        (Last, Memory) = Controller.Step(Settings, Memory, Said(), commands, new Instant(1_737_936_000_000 + Now, Now, 0));
        return Last;
    }

    public Decision Run(double seconds)
    {
        long end = Now + (long)(seconds * 1000);
        do
        {
            Tick();
        }
        while (Now < end);
        return Last;
    }

    /// <summary>Runs until something is so, and fails when it does not come about.</summary>
    public Decision RunUntil(Func<Decision, bool> so, double mostSeconds = 7200)
    {
        long end = Now + (long)(mostSeconds * 1000);
        while (Now < end)
        {
            if (so(Tick()))
            {
                return Last;
            }
        }

        throw new Xunit.Sdk.XunitException($"Not within {mostSeconds} s. Last: {Last.Mode}, {Last.Curb}: {Last.Why}");
    }
}
