using PileController.Control.Decisions;

namespace PileController.Control.Interlocks;

/// <summary>What an interlock does with one actuator while it acts, whatever a person asks of it.</summary>
public enum InterlockGrip
{
    /// <summary>Leaves it alone.</summary>
    None,

    /// <summary>Holds it off.</summary>
    HoldsOff,

    /// <summary>Gives it what the frost guard needs, where that is more.</summary>
    Moves,
}

/// <summary>How far each interlock reaches.</summary>
public static class InterlockReach
{
    /// <summary>What a row does with an actuator while it acts.</summary>
    public static InterlockGrip Of(Interlock row, Actuator actuator)
    {
        bool water = actuator is Actuator.Pump or Actuator.Valve;
        return row.Action switch
        {
            InterlockAction.Trip => InterlockGrip.HoldsOff,
            InterlockAction.HoldWater => Held(water || IsTooWarmFor(row, actuator)),
            InterlockAction.HoldAir => Held(actuator == Actuator.Blower),
            InterlockAction.HoldAll => Held(water || actuator == Actuator.Blower || IsTooWarmFor(row, actuator)),
            InterlockAction.GuardFrost => water ? InterlockGrip.Moves : InterlockGrip.None,
            _ => InterlockGrip.None,
        };
    }

    private static InterlockGrip Held(bool held) => held ? InterlockGrip.HoldsOff : InterlockGrip.None;

    // Backup heat draws nothing from the heap: only a house that is too warm speaks against it.
    private static bool IsTooWarmFor(Interlock row, Actuator actuator) => actuator == Actuator.Backup && row.Source == Signal.House;
}
