namespace PileController.Control.Interlocks;

/// <summary>
/// The interlocks, as rows of data, in the order in which their verdicts are told. They act after the decision and
/// before the outputs; nothing a person takes by hand outranks them.
/// </summary>
public static class InterlockTable
{
    private const long Second = 1000;
    private const long Minute = 60 * Second;

    /// <summary>
    /// How many rows the first records know. Memories and digests tell of a later row only once there is something to tell.
    /// </summary>
    public const int FirstCount = 17;

    // What air that is good again stays below the limit by, ppm (common practice, no source).
    private const double AiredPpm = 500;

    // As often within an hour as no sound program is started (common practice, no source).
    private const int MostRestarts = 5;

    /// <summary>All rows.</summary>
    public static IReadOnlyList<Interlock> All { get; } =
    [
        new("leak", Signal.Leak, Comparison.Above, _ => 0.5, 0, 20 * Second, false, InterlockAction.Trip,
            "The leak switch is wet.",
            "Find and mend the leak, dry the switch, then clear. Keep hands off mains parts that may be wet; a licensed electrician decides."),
        new("level", Signal.LevelMissing, Comparison.Above, _ => 0.5, 0, 30 * Second, false, InterlockAction.Trip,
            "The tank is below its mark.",
            "Top the loop up, look for the loss, then clear."),
        new("noFlow", Signal.NoFlow, Comparison.Above, _ => 0.5, 0, 0, true, InterlockAction.Trip,
            "The pump was told to run and no water moved.",
            "Look for a closed valve, air, ice or a blockage, and that the pump turns; then clear."),
        new("pumpSilent", Signal.PumpSilent, Comparison.Above, _ => 0.5, 0, 30 * Second, false, InterlockAction.Trip,
            "The pump was told to run and took no power.",
            "Look at fuse, relay, wiring and the pump; then clear."),
        new("heapFire", Signal.HottestHeap, Comparison.Above, s => s.Limits.HeapFireC, 5, Minute, false, InterlockAction.HoldAir,
            "The heap is hotter than microbes can make it.",
            "Treat it as a fire watch: no air, look for smoke and smell, keep people back and call the fire service if in doubt."),
        new("lineFrost", Signal.ColdestLine, Comparison.Below, s => s.Limits.LineFrostC, 1, 30 * Second, true, InterlockAction.GuardFrost,
            "A water line is near freezing.",
            "Water is moved by itself. If it comes often, insulate or bury the line, or drain it back."),
        new("supplyHot", Signal.Supply, Comparison.Above, s => s.Limits.SupplyMostC, 5, 30 * Second, false, InterlockAction.HoldWater,
            "Water to the house is hot enough to scald at once.",
            "Keep off the pipes; the draw resumes by itself when the water is cooler."),
        new("houseHot", Signal.House, Comparison.Above, s => s.Limits.HouseMostC, 2, Minute, false, InterlockAction.HoldAll,
            "The house is too warm.",
            "Open the vents; the draw resumes by itself."),
        new("batteryLow", Signal.Battery, Comparison.Below, s => s.Limits.BatteryLowV, 0.6, 5 * Minute, false, InterlockAction.HoldAir,
            "The battery is low: the blower rests.",
            "Nothing to do if the sun returns; else charge it."),
        new("batteryEmpty", Signal.Battery, Comparison.Below, s => s.Limits.BatteryEmptyV, 0.6, Minute, false, InterlockAction.HoldAll,
            "The battery is nearly empty: only frost guard runs.",
            "Charge the battery."),
        new("heapBlind", Signal.HeapBlind, Comparison.Above, _ => 0.5, 0, 10 * Minute, false, InterlockAction.HoldAll,
            "No probe in the heap can be believed.",
            "Look at the heap probes' wiring; the draw resumes when one answers."),
        new("houseBlind", Signal.HouseBlind, Comparison.Above, _ => 0.5, 0, 2 * Minute, false, InterlockAction.Warn,
            "The house probe cannot be believed.",
            "Look at the house probe; until then the want is reckoned from the air outside."),
        new("flowWhileOff", Signal.FlowWhileOff, Comparison.Above, _ => 0.5, 0, 2 * Minute, false, InterlockAction.Warn,
            "Water moves though the pump stands.",
            "Look for a stuck relay, a syphon, or a flow meter that counts noise."),
        new("storeFailing", Signal.StoreFailing, Comparison.Above, _ => 0.5, 0, 30 * Second, false, InterlockAction.Warn,
            "The record is not being written.",
            "Look at the card and its free space; control goes on."),
        new("clockJump", Signal.ClockJump, Comparison.Above, _ => 5, 0, 0, false, InterlockAction.Warn,
            "The clock jumped.",
            "Nothing to do if it was set on purpose; durations are not touched by it."),
        new("tickLate", Signal.TickLate, Comparison.Above, s => s.TickSeconds, 0, 0, false, InterlockAction.Warn,
            "A tick came late.",
            "If it goes on, the board is overloaded or its card is failing."),
        new("restarts", Signal.Restarts, Comparison.Above, _ => MostRestarts - 0.5, 0, 0, false, InterlockAction.Trip,
            "The program was started again and again.",
            "All is off and the page is up. Look in the service's journal for what ended it, at the supply and at the card; then clear."),
        new("carbonDioxide", Signal.CarbonDioxide, Comparison.Above, s => s.Limits.CarbonDioxidePpm, AiredPpm, 5 * Minute, false, InterlockAction.HoldAir,
            "The air in the house is foul with carbon dioxide.",
            "Do not go in. Air the house from outside; the blower rests until the air is good again, and heap gases may hold worse than carbon dioxide."),
    ];

    /// <summary>Finds a row by its id.</summary>
    public static int IndexOf(string id)
    {
        for (int i = 0; i < All.Count; i++)
        {
            if (string.Equals(All[i].Id, id, StringComparison.OrdinalIgnoreCase))
            {
                return i;
            }
        }

        return -1;
    }
}
