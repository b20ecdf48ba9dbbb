using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Records;

namespace PileController.Tests.Support;

/// <summary>Invented numbers of a plausible winter, for looking at the page. No physics.</summary>
public static class MadeUp
{
    private const double Day = 86_400_000;

    public static IReadOnlyList<Interlock> Interlocks { get; } =
    [
        new("noFlow", Signal.NoFlow, Comparison.Above, _ => 0, 0, 60_000, false, InterlockAction.Trip, "The pump runs and no water moves.", "Look for a shut valve, air or a dry tank, then clear the trip."),
        new("heapFire", Signal.HottestHeap, Comparison.Above, _ => 0, 0, 30_000, false, InterlockAction.Trip, "The heap is above its fire-watch limit.", "Do not open it without water at hand; wet it from above and watch it."),
        new("lineFrost", Signal.ColdestLine, Comparison.Below, _ => 0, 0, 0, true, InterlockAction.GuardFrost, "Line water is close to freezing.", "Check the insulation of the lines."),
        new("batteryLow", Signal.Battery, Comparison.Below, _ => 0, 0, 120_000, false, InterlockAction.HoldAir, "The battery is low.", "Clear the panel of snow or charge the battery."),
        new("houseHot", Signal.House, Comparison.Above, _ => 0, 0, 60_000, false, InterlockAction.HoldAll, "The house is too warm.", "Open the vents; the draw resumes by itself."),
    ];

    /// <summary>The value of a series at a moment.</summary>
    public static double Value(string series, long utcMilliseconds)
    {
        double turn = 2 * Math.PI * utcMilliseconds / Day;
        double sway = Math.Sin(turn);
        return series switch
        {
            "heapCore" => 58 + (1.2 * Math.Sin(turn / 9)),
            "heapMiddle" => 56.5 + (1.4 * Math.Sin(turn / 9)),
            "heapTurns" => 49 + (3.5 * sway),
            "heapEdge" => 31 + (2 * Math.Sin(turn / 5)),
            "activeZone" => 55.4 + (1.5 * Math.Sin(turn / 7)),
            "supply" => 41 + (4 * sway),
            "return" => 33 + (3 * sway),
            "house" => 8.4 - (3 * sway),
            "floor" => 10.2 - sway,
            "tank" => 36 + (2 * sway),
            "outside" => -2.5 - (5.5 * sway),
            "ductAir" => 22 + (3 * sway),
            "setPoint" => sway > 0 ? 8 : 12,
            "want" => Math.Max(0, 1900 + (1400 * sway)),
            "means" => 1350 + (200 * Math.Sin(turn / 7)),
            "grant" => Math.Min(Value("want", utcMilliseconds), Value("means", utcMilliseconds)),
            "waterDraw" => Value("grant", utcMilliseconds) * 0.82,
            "airDraw" => Value("grant", utcMilliseconds) * 0.11,
            "flow" => 2.3 + (0.4 * sway),
            "pumpDuty" => 0.45 + (0.2 * sway),
            "blowerDuty" => Math.Max(0, 0.3 * sway),
            "pumpPower" => 11.5,
            "blowerPower" => 4.2,
            "battery" => 12.6,
            "level" => 1,
            _ => 0,
        };
    }

    /// <summary>What a sound rig says at a moment.</summary>
    public static RigReadings Readings(Instant at)
    {
        Reading[] readings = new Reading[ChannelTable.Count];
        foreach (ChannelInfo info in ChannelTable.All.Where(info => info.Channel != Channel.Sun))
        {
            readings[(int)info.Channel] = Reading.FromValue(info.Channel, Value(info.Name, at.UtcMilliseconds));
        }

        return new RigReadings(readings);
    }

    /// <summary>A line of the list of decisions.</summary>
    public static DecisionLine Line(long sequence, long utcMilliseconds)
    {
        (DecisionKinds kinds, Mode mode, Curb curb, string why) = (sequence % 4) switch
        {
            0 => (DecisionKinds.Curb, Mode.Drawing, Curb.Means, "Drawing 1.3 kW of the 2.6 kW the house wants: more would break the heap's floor within two days."),
            1 => (DecisionKinds.Mode, Mode.Recovering, Curb.Floor, "The bed at the turns has cooled to 46 °C, so the heap rests until it is warm again."),
            2 => (DecisionKinds.Hand, Mode.ByHand, Curb.ByHand, "Robin holds the pump at 60 % for ten minutes."),
            _ => (DecisionKinds.Trip, Mode.Tripped, Curb.Interlock, "The pump ran for a minute and no water moved, so everything is off."),
        };
        return new DecisionLine(sequence, utcMilliseconds, kinds, mode, curb, 2600, 1300, 1300, 1120, 55.2, 7.9, why, null);
    }
}
