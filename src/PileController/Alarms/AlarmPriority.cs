namespace PileController.Alarms;

/// <summary>
/// How soon and how badly it matters: by the harm that comes when nobody acts and the time there is to act (the idea of
/// ISA-18.2 and IEC 62682, from memory).
/// </summary>
public enum AlarmPriority
{
    /// <summary>To be seen to within days.</summary>
    Low = 0,

    /// <summary>To be seen to today.</summary>
    Medium,

    /// <summary>To be seen to now: people, plants or the rig are in danger.</summary>
    High,
}

/// <summary>Alarms that may share one cause: the first that rises in a group is marked.</summary>
public enum AlarmGroup
{
    /// <summary>The controller itself: loop, clock, record, messages.</summary>
    Service = 0,

    /// <summary>What measures.</summary>
    Probes,

    /// <summary>Pump, lines, tank, valve.</summary>
    Water,

    /// <summary>The heap.</summary>
    Heap,

    /// <summary>The greenhouse.</summary>
    House,

    /// <summary>Battery and blower.</summary>
    Power,
}
