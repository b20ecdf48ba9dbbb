namespace PileController.Control.Modes;

/// <summary>What moves the controller from one mode to another.</summary>
public enum Trigger
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>Water draw is asked for.</summary>
    WaterAsked,

    /// <summary>Only air draw is asked for.</summary>
    AirAsked,

    /// <summary>Flow has been proven.</summary>
    FlowProven,

    /// <summary>No draw is asked for any more.</summary>
    DrawEnded,

    /// <summary>The heap has come near its floor.</summary>
    FloorNear,

    /// <summary>The heap has recovered.</summary>
    Recovered,

    /// <summary>A line is near freezing.</summary>
    FrostNear,

    /// <summary>The lines are warm again.</summary>
    FrostGone,

    /// <summary>A person has taken an actuator.</summary>
    HandTaken,

    /// <summary>Nothing is held by hand any more.</summary>
    HandEnded,

    /// <summary>Work on the rig begins.</summary>
    ServicingBegun,

    /// <summary>Work on the rig has ended.</summary>
    ServicingEnded,

    /// <summary>An interlock has tripped.</summary>
    Trip,

    /// <summary>The last trip has been cleared.</summary>
    TripsCleared,
}
