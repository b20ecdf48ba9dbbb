namespace PileController.Control.Modes;

/// <summary>What the controller is doing.</summary>
public enum Mode
{
    /// <summary>Nothing drawn, ready to.</summary>
    Standby = 0,

    /// <summary>Filling, purging air and proving flow before heat is drawn.</summary>
    Priming,

    /// <summary>Heat is being drawn.</summary>
    Drawing,

    /// <summary>The heap is near its floor and is left to recover.</summary>
    Recovering,

    /// <summary>Water is moved only to keep the lines from freezing.</summary>
    FrostGuard,

    /// <summary>A person has taken the pump, valve or blower.</summary>
    ByHand,

    /// <summary>Outputs are locked off for work on the rig.</summary>
    Servicing,

    /// <summary>An interlock has stopped the rig and latched.</summary>
    Tripped,
}
