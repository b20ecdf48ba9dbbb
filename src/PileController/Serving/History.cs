using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records;
using PileController.Simulation;

namespace PileController.Serving;

/// <summary>The days a simulated holding has already lived when its page opens.</summary>
internal static class History
{
    private static readonly Command[] NoCommands = [];

    /// <summary>Lives so many days and hands out each tick as it is recorded.</summary>
    public static IEnumerable<TickEntry> Live(Holding holding, ControlSettings control, int days)
    {
        long ticks = (long)(days * 86_400 / control.TickSeconds);
        for (long i = 0; i < ticks; i++)
        {
            RigReadings readings = holding.Read();
            Memory before = holding.Memory;
            Decision decision = holding.Tick(readings, NoCommands);
            yield return new TickEntry(readings, NoCommands, before, decision, holding.Memory);
        }
    }
}
