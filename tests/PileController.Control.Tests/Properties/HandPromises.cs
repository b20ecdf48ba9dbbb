using PileController.Control.Decisions;
using PileController.Control.Modes;

namespace PileController.Control.Tests.Properties;

/// <summary>What is held by hand comes to an end by itself.</summary>
internal static class HandPromises
{
    private const long Day = 86_400_000;

    public static IReadOnlyList<Promise> All { get; } =
    [
        new("a hold ends when it was said to, within a day, and with a restart", Ends),
    ];

    private static Action<Tick> Ends()
    {
        Dictionary<Actuator, long> ends = [];
        return tick =>
        {
            if (tick.Move.Restart)
            {
                Assert.Empty(tick.Before.Hands);
                ends.Clear();
            }

            foreach (TakeByHand take in tick.Move.Commands.OfType<TakeByHand>())
            {
                ends[take.Actuator] = tick.Now + Math.Clamp(take.Milliseconds, 1, Day);
            }

            foreach (HandHold hand in tick.After.Hands)
            {
                Assert.True(ends.TryGetValue(hand.Actuator, out long end), $"nobody took the {hand.Actuator}");
                Assert.InRange(hand.UntilMonotonicMilliseconds, tick.Now + 1, end);
            }

            Assert.Equal(tick.After.Hands.Length, tick.After.Hands.Select(h => h.Actuator).Distinct().Count());
            Assert.True(tick.Decision.Mode != Mode.ByHand || tick.After.Hands.Length > 0);
            if (tick.IsLast)
            {
                Assert.Empty(tick.After.AfterRestart().Hands);
                Instant later = new(0, tick.Now + Day + 1, 0);
                Memory left = Controller.Step(tick.Settings, tick.After, tick.Move.Readings, [], later).Memory;
                Assert.Empty(left.Hands);
                Assert.NotEqual(Mode.ByHand, left.Mode);
            }
        };
    }
}
