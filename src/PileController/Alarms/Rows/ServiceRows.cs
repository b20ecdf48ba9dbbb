using System.Globalization;
using static PileController.Alarms.AlarmPriority;
using static PileController.Alarms.Signs;

namespace PileController.Alarms.Rows;

/// <summary>The controller itself, its record and its messages.</summary>
internal static class ServiceRows
{
    private const double Minute = 60;
    private const double Hour = 3600;

    // A year of record (50 MB) and what a commit needs meanwhile. Common practice, no source.
    private const double LeastFreeBytes = 64e6;

    public static IEnumerable<AlarmRow> Of(AlarmPlace place) =>
    [
        new("controlFails", "Control fails", High, AlarmGroup.Service, When(f => f.Since.StepFaults > 0 || f.Decision is null))
        {
            Cause = "The program came upon something it cannot reckon with: a fault of its own.",
            Consequence = "Pump, valve, blower and backup are kept off. The house gets no heat from the heap.",
            Action = "Look after the house by other heat. Note what the Rig view tells of the last fault, restart the service; if it comes again, send the record to whoever cares for the program.",
            DelaySeconds = 20, BridgeSeconds = 10, ClearSeconds = 5 * Minute,
        },
        new(Sources.Rig, "The rig does not answer", High, AlarmGroup.Service, When(f => f.Since.RigFaults > 0))
        {
            Cause = "Lines or probe files of the board cannot be read or written: a loose plug, a failed board, a missing permission.",
            Consequence = "Nothing can be measured or switched; the controller keeps all outputs off as far as it can.",
            Action = "Make sure at the rig that pump and blower stand as they should. Pull the plug of the rig before you touch its wiring; mains parts are for a licensed electrician.",
            DelaySeconds = Minute, BridgeSeconds = 30, ClearSeconds = 5 * Minute,
        },
        new("recordStops", "The record is not being written", Medium, AlarmGroup.Service, When(f => !f.Record.Accepting))
        {
            Cause = "The disk or card is full, worn out or read-only.",
            Consequence = "Control goes on, but what happens now will not be remembered.",
            Action = "Free space on the card or put in a new one; the record takes up again by itself.",
            DelaySeconds = Minute, BridgeSeconds = 30, ClearSeconds = 5 * Minute,
            Detail = f => f.Record.Fault,
        },
        new("diskFull", "The disk is nearly full", Low, AlarmGroup.Service, Below(f => f.Record.FreeBytes, LeastFreeBytes, LeastFreeBytes))
        {
            Cause = "Something else fills the disk or card that the record lies on; the record itself grows by about 50 MB a year.",
            Consequence = "Once it is full the record goes on in what room it has set aside, commonly for an hour or two, and then stops. Control goes on.",
            Action = "Free space on the card: old backups, logs, what does not belong there.",
            DelaySeconds = Minute, BridgeSeconds = 30, ClearSeconds = 5 * Minute,
            Detail = f => f.Record.FreeBytes is { } bytes ? string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e6:0} MB are free") : null,
        },
        new("recordGaps", "Ticks were not recorded", Low, AlarmGroup.Service, When(f => f.Since.Dropped > 0))
        {
            Cause = "The card was too slow or refused to write for a while.",
            Consequence = "The record has a gap; days with gaps count less.",
            Action = "If it comes again, put in a better card and keep a backup of the record.",
            ClearSeconds = Hour, FollowsFrom = ["recordStops"],
        },
        new("recordFault", "The record tells of a fault", Low, AlarmGroup.Service, When(f => f.Record.Accepting && f.Record.Fault is not null))
        {
            Cause = "A file of the record is damaged and was set aside, or ticks cannot be moved on to the store.",
            Consequence = "Part of the past cannot be shown. What is new is kept.",
            Action = "Make a backup, run \"record verify\", and put in another card if it comes again.",
            DelaySeconds = 10 * Minute, ClearSeconds = 10 * Minute, FollowsFrom = ["recordStops"],
            Detail = f => f.Record.Fault,
        },
        new("ticksLate", "Ticks come late", Medium, AlarmGroup.Service, Late(place))
        {
            Cause = "The board is overloaded, too hot, short of power, or its card is failing.",
            Consequence = "Decisions come late; when it gets worse, pump and blower are switched off.",
            Action = "Look at the board's supply and cooling, stop what else runs on it, restart it.",
            DelaySeconds = 10 * Minute, BridgeSeconds = 5 * Minute, ClearSeconds = 30 * Minute,
        },
        new("restarts", "Started again and again", High, AlarmGroup.Service, place.Interlock("restarts"))
        {
            Cause = "The program died or hung five times within an hour: a weak supply, a failing card, a device that hangs the board, or a fault of the program.",
            Consequence = "All outputs are off until somebody clears the trip. The heap loses nothing by resting; the house is without its heat.",
            Action = "Look in the service's journal for what ended it, at the supply and at the card; then clear the trip.",
        },
        new("clockUnsteady", "The clock jumps again and again", Low, AlarmGroup.Service, place.Interlock("clockJump"))
        {
            Cause = "The board has no network time, or two programs set its clock. A single jump is no alarm: a clock that is set right asks nothing of anybody.",
            Consequence = "Hours of day are wrong: day and night set points, and what is said of tonight. No end time or delay is touched.",
            Action = "Look at the board's time service and its clock battery.",
            DelaySeconds = Hour, BridgeSeconds = 30 * Minute, ClearSeconds = 2 * Hour,
        },
        new("pushFails", "Messages do not go out", Low, AlarmGroup.Service, When(f => f.PushTrouble is not null))
        {
            Cause = "The network is down, or the address or password of the mail or webhook is wrong.",
            Consequence = "Alarms stand on this page only; nobody is called.",
            Action = "Look at the network and at \"alarms\" in the settings. Until then look at this page.",
            Detail = f => f.PushTrouble,
        },
    ];

    private static AlarmSign Late(AlarmPlace place)
    {
        AlarmSign late = place.Interlock("tickLate");
        return (facts, standing) => facts.Since.Missed > 0 ? true : late(facts, standing);
    }
}
