using PileController.Control.Modes;
using PileController.Control.Readings;

namespace PileController.Control.Tests.Properties;

/// <summary>The pump never runs on in a dry line.</summary>
internal static class LinePromises
{
    public static IReadOnlyList<Promise> All { get; } =
    [
        new("a pump that moves no water is stopped within the interlock's time", Stops),
        new("water is drawn only after priming has proven the flow", Primes),
        Promise.OfEach("no pump runs while leak, level, noFlow or pumpSilent act", Stands),
    ];

    private static void Stands(Tick tick)
    {
        if (tick.Acts("leak") || tick.Acts("level") || tick.Acts("noFlow") || tick.Acts("pumpSilent"))
        {
            Assert.Equal(0, tick.Told.PumpDuty);
        }
    }

    // Counted from the last reading with proof, the interlock acts at a tick, and at the second without proof at the soonest.
    private static Action<Tick> Stops()
    {
        long unproven = -1;
        long runSince = -1;
        double longest = 0;
        return tick =>
        {
            runSince = tick.Before.Outputs.PumpDuty <= 0 ? -1 : runSince >= 0 ? runSince : tick.Before.LastMonotonicMilliseconds;
            unproven = tick.Before.Outputs.PumpDuty <= 0 || Proof(tick) ? -1
                : unproven >= 0 ? unproven : tick.Before.LastMonotonicMilliseconds;
            longest = unproven >= 0 ? Math.Max(longest, tick.Move.Seconds) : 0;
            if (unproven >= 0 && tick.Told.PumpDuty > 0)
            {
                double since = (tick.Now - unproven) * 0.001;
                InterlockLimits limits = tick.Settings.Limits;
                bool graced = (tick.Now - runSince) * 0.001 < limits.NoFlowGraceSeconds || Unreadable(tick)
                    || tick.Before.Outputs.ValveOpening <= 0;
                double most = graced ? Math.Max(limits.NoFlowSeconds, limits.NoFlowGraceSeconds) : limits.NoFlowSeconds;
                Assert.True(since <= most + longest, $"{since} s without proof, ticks of up to {longest} s");
            }
        };
    }

    private static bool Unreadable(Tick tick) =>
        !tick.Decision.Readings.TryGet(Channel.Flow, out _) && !tick.Decision.Readings.TryGet(Channel.PumpPower, out _);

    private static bool Proof(Tick tick) => tick.Decision.Readings.TryGet(Channel.Flow, out double flow)
        ? flow >= tick.Settings.Limits.NoFlowLitresPerMinute
        : tick.Decision.Readings.TryGet(Channel.PumpPower, out double watts) && watts >= 0.5;

    // Flow is proven by a running pump and a meter that does not say otherwise, for the whole time, as seen from here.
    private static Action<Tick> Primes()
    {
        long flowing = -1;
        bool proven = false;
        return tick =>
        {
            bool flows = tick.Before.Outputs.PumpDuty > 0
                && (!tick.Decision.Readings.TryGet(Channel.Flow, out double flow) || flow >= tick.Settings.Limits.NoFlowLitresPerMinute);
            flowing = !flows ? -1 : flowing >= 0 ? flowing : tick.Now;
            bool drawsWater = tick.Decision.Mode == Mode.Drawing && tick.Told.PumpDuty > 0;
            if (drawsWater && tick.Decision.ModeBefore == Mode.Priming)
            {
                Assert.True(flowing >= 0 && tick.Now - flowing >= tick.Settings.PrimeSeconds * 1000, "drawing before the time was up");
                proven = true;
            }

            proven &= tick.Before.Outputs.PumpDuty > 0;
            Assert.True(!drawsWater || proven, $"drawing water from {tick.Decision.ModeBefore}");
        };
    }
}
