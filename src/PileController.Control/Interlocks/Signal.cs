namespace PileController.Control.Interlocks;

/// <summary>What the interlocks watch. Those that are yes or no are 1 or 0.</summary>
public enum Signal
{
    /// <summary>The leak switch is wet.</summary>
    Leak = 0,

    /// <summary>The tank has no water at its mark.</summary>
    LevelMissing,

    /// <summary>The pump is told to run and no water moves.</summary>
    NoFlow,

    /// <summary>The pump is told to run and takes no power.</summary>
    PumpSilent,

    /// <summary>Water moves though the pump is told to stand.</summary>
    FlowWhileOff,

    /// <summary>Water to the house, °C.</summary>
    Supply,

    /// <summary>House air, °C.</summary>
    House,

    /// <summary>The colder of the two lines, °C; the air outside where neither can be believed; no limit while the air is above freezing.</summary>
    ColdestLine,

    /// <summary>The hottest heap probe, °C.</summary>
    HottestHeap,

    /// <summary>Battery, V.</summary>
    Battery,

    /// <summary>No heap probe can be believed.</summary>
    HeapBlind,

    /// <summary>The house probe cannot be believed.</summary>
    HouseBlind,

    /// <summary>The record does not accept ticks.</summary>
    StoreFailing,

    /// <summary>The wall clock jumped, s.</summary>
    ClockJump,

    /// <summary>The tick came late, s.</summary>
    TickLate,

    /// <summary>How often the program was started within the hour without having been stopped.</summary>
    Restarts,

    /// <summary>Carbon dioxide in the house, ppm.</summary>
    CarbonDioxide,

    /// <summary>The heap's active zone as it is estimated, °C: what the heap's floor is set for.</summary>
    ActiveZone,
}
