using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Control.Modes;

namespace PileController.Control.Tests.Properties;

/// <summary>A trip wins over everything, and only a person ends it.</summary>
internal static class TripPromises
{
    public static IReadOnlyList<Promise> All { get; } =
    [
        Promise.OfEach("all is safe while tripped or at work on the rig, whatever is asked", IsSafe),
        Promise.OfEach("a trip ends only by the command that clears it", EndsByCommand),
    ];

    private static void IsSafe(Tick tick)
    {
        bool latched = Array.Exists(tick.After.Interlocks, i => i.Latched);
        Assert.True(!latched || tick.Decision.Mode == Mode.Tripped, $"{tick.Decision.Mode} with a trip that stands");
        if (latched || tick.After.Servicing || tick.Decision.Mode is Mode.Tripped or Mode.Servicing)
        {
            Assert.Equal(Outputs.Safe, tick.Told);
        }
    }

    private static void EndsByCommand(Tick tick)
    {
        for (int i = 0; i < tick.After.Interlocks.Length; i++)
        {
            if (InterlockMemory.Of(tick.Before.Interlocks, i).Latched && !tick.After.Interlocks[i].Latched)
            {
                Assert.Contains(tick.Move.Commands, c => c is ClearTrip clear && clear.Interlock == InterlockTable.All[i].Id);
                Assert.True(tick.Decision.Kinds.HasFlag(DecisionKinds.Clear));
            }
        }
    }
}
