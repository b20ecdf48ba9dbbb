using PileController.Control.Decisions;
using PileController.Control.Modes;

namespace PileController.Whys;

/// <summary>One thing that could have been otherwise at a tick.</summary>
public enum Otherwise
{
    /// <summary>House air 2 K warmer.</summary>
    HouseWarmer = 0,

    /// <summary>House air 2 K colder.</summary>
    HouseColder,

    /// <summary>Air outside 5 K warmer.</summary>
    OutsideWarmer,

    /// <summary>Air outside 5 K colder.</summary>
    OutsideColder,

    /// <summary>The heap's floor set 2 K lower.</summary>
    FloorLower,

    /// <summary>The heap's floor set 2 K higher.</summary>
    FloorHigher,

    /// <summary>No heat kept back for the coldest weeks.</summary>
    NoReserve,

    /// <summary>The house's set points 2 K higher.</summary>
    SetPointHigher,

    /// <summary>The battery 1 V higher.</summary>
    BatteryFuller,

    /// <summary>The battery 1 V lower.</summary>
    BatteryEmptier,

    /// <summary>No least run or rest of the pump.</summary>
    NoLeastTimes,

    /// <summary>Nothing held by hand.</summary>
    NothingByHand,
}

/// <summary>What the tick would have decided had one thing been otherwise.</summary>
/// <param name="What">The thing.</param>
/// <param name="Mode">The mode then.</param>
/// <param name="Curb">What would have limited the grant.</param>
/// <param name="GrantWatts">The grant then, W.</param>
/// <param name="Outputs">What the actuators would have been told.</param>
public sealed record WhatIf(Otherwise What, Mode Mode, Curb Curb, double GrantWatts, Outputs Outputs);
