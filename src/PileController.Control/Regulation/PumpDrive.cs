namespace PileController.Control.Regulation;

/// <summary>How the pump's flow is set.</summary>
public enum PumpDrive
{
    /// <summary>By its duty, anything from least to full.</summary>
    Duty = 0,

    /// <summary>By a relay: full flow or none, so heat is dealt out in runs.</summary>
    OnOff,

    /// <summary>By the opening of a motor valve, the pump running at one duty.</summary>
    Valve,
}

/// <summary>What the motor valve tells of where it stands.</summary>
public enum ValveFeedback
{
    /// <summary>Switches at both ends report when it has arrived there.</summary>
    EndSwitches = 0,

    /// <summary>Nothing: its place is reckoned from the time it travelled, and it is driven against a stop once a day.</summary>
    None,
}
