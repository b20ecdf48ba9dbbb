using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records.Checking;

namespace PileController.Whys;

/// <summary>
/// Decides a recorded tick again with one thing otherwise, and tells where that would have changed it. Only this very
/// tick is asked: what is settled over hours (the estimate, the look ahead) stands as it was. Pure.
/// </summary>
public static class WhatIfs
{
    private const double LeastWatts = 10;
    private const double LeastShare = 0.02;

    private static readonly IReadOnlyList<Nudge> Nudges =
    [
        new(Otherwise.HouseWarmer) { Readings = r => Moved(r, Channel.House, 2) },
        new(Otherwise.HouseColder) { Readings = r => Moved(r, Channel.House, -2) },
        new(Otherwise.OutsideWarmer) { Readings = r => Moved(r, Channel.Outside, 5) },
        new(Otherwise.OutsideColder) { Readings = r => Moved(r, Channel.Outside, -5) },
        new(Otherwise.FloorLower) { Settings = s => s with { HeapFloorC = s.HeapFloorC - 2 } },
        new(Otherwise.FloorHigher) { Settings = s => s with { HeapFloorC = s.HeapFloorC + 2 } },
        new(Otherwise.NoReserve) { Settings = s => s with { ComfortReserveKelvin = 0, MidwinterReserveKelvin = 0 } },
        new(Otherwise.SetPointHigher) { Settings = s => s with { HouseDayC = s.HouseDayC + 2, HouseNightC = s.HouseNightC + 2 } },
        new(Otherwise.BatteryFuller) { Readings = r => Moved(r, Channel.Battery, 1) },
        new(Otherwise.BatteryEmptier) { Readings = r => Moved(r, Channel.Battery, -1) },
        new(Otherwise.NoLeastTimes) { Settings = s => s with { LeastRunSeconds = 0, RelayLeastRunSeconds = 0, LeastRestSeconds = 0 } },
        new(Otherwise.NothingByHand) { Memory = m => m with { Hands = [] } },
    ];

    /// <summary>What would have changed a tick.</summary>
    /// <param name="settings">The settings it was made with.</param>
    /// <param name="tick">The tick.</param>
    /// <param name="made">What it decided.</param>
    public static IReadOnlyList<WhatIf> Of(ControlSettings settings, RecalledTick tick, Decision made)
    {
        List<WhatIf> found = [];
        foreach (Nudge nudge in Nudges)
        {
            (Decision other, _) = Controller.Step(
                nudge.Settings(settings), nudge.Memory(tick.Before), nudge.Readings(tick.Raw), tick.Commands, tick.At);
            if (Differs(made, other))
            {
                found.Add(new WhatIf(nudge.What, other.Mode, other.Curb, other.GrantWatts, other.Outputs));
            }
        }

        return found;
    }

    private static bool Differs(Decision one, Decision other) =>
        one.Mode != other.Mode || one.Curb != other.Curb || one.Outputs.BackupOn != other.Outputs.BackupOn
        || Math.Abs(one.GrantWatts - other.GrantWatts) >= LeastWatts
        || Enum.GetValues<Actuator>().Any(actuator => Math.Abs(one.Outputs.Of(actuator) - other.Outputs.Of(actuator)) >= LeastShare);

    // A probe that was not believed stays so: what it would have said is nobody's knowledge.
    private static RigReadings Moved(RigReadings readings, Channel channel, double by)
    {
        Reading[] all = readings.AsSpan().ToArray();
        Reading was = all[(int)channel];
        if (was.IsGood)
        {
            all[(int)channel] = Reading.FromValue(channel, was.ValueOf(channel) + by, was.Quality, was.AgeMilliseconds);
        }

        return new RigReadings(all);
    }

    private sealed record Nudge(Otherwise What)
    {
        public Func<ControlSettings, ControlSettings> Settings { get; init; } = settings => settings;

        public Func<Memory, Memory> Memory { get; init; } = memory => memory;

        public Func<RigReadings, RigReadings> Readings { get; init; } = readings => readings;
    }
}
