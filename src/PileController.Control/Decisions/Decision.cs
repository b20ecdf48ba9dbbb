using PileController.Control.Foresight;
using PileController.Control.Modes;
using PileController.Control.Readings;

namespace PileController.Control.Decisions;

/// <summary>
/// Everything one tick knew and chose. A pure function of settings, memory, readings, commands and instant:
/// the same five give the same bits.
/// </summary>
public sealed record Decision
{
    /// <summary>Number of the tick; grows by one each tick for the life of the record, whatever the clock does.</summary>
    public required long Sequence { get; init; }

    /// <summary>When.</summary>
    public required Instant At { get; init; }

    /// <summary>The readings after validation.</summary>
    public required RigReadings Readings { get; init; }

    /// <summary>What is believed of the heap.</summary>
    public required HeapEstimate Estimate { get; init; }

    /// <summary>The mode from this tick on.</summary>
    public required Mode Mode { get; init; }

    /// <summary>The mode before.</summary>
    public required Mode ModeBefore { get; init; }

    /// <summary>When the mode was entered, on the monotonic clock.</summary>
    public required long ModeSinceMonotonicMilliseconds { get; init; }

    /// <summary>What makes this decision worth a line of its own.</summary>
    public required DecisionKinds Kinds { get; init; }

    /// <summary>The draw the house would like, W.</summary>
    public required double WantWatts { get; init; }

    /// <summary>The draw the heap can bear, W.</summary>
    public required double MeansWatts { get; init; }

    /// <summary>The draw allowed, W.</summary>
    public required double GrantWatts { get; init; }

    /// <summary>The part of the grant asked of the water, W.</summary>
    public required double WaterGrantWatts { get; init; }

    /// <summary>The part of the grant asked of the air, W.</summary>
    public required double AirGrantWatts { get; init; }

    /// <summary>The one thing that limits the grant.</summary>
    public required Curb Curb { get; init; }

    /// <summary>The heap's floor as it was set for this tick, °C.</summary>
    public double HeapFloorCelsius { get; init; }

    /// <summary>The house set point now, °C.</summary>
    public required double HouseSetPointCelsius { get; init; }

    /// <summary>Heat taken now, as metered.</summary>
    public required MeteredDraw Draw { get; init; }

    /// <summary>Running totals after this tick.</summary>
    public required Totals Totals { get; init; }

    /// <summary>One verdict an interlock, in the order of the interlock table.</summary>
    public required Verdict[] Verdicts { get; init; }

    /// <summary>Index of the first interlock that acts, or -1.</summary>
    public required int FirstActing { get; init; }

    /// <summary>What is held by hand.</summary>
    public required HandHold[] Hands { get; init; }

    /// <summary>What the actuators are told.</summary>
    public required Outputs Outputs { get; init; }

    /// <summary>One note a command or event of this tick left (a refusal, an end), or null.</summary>
    public required string? Note { get; init; }

    /// <summary>What is said of the house until the next morning; null before the first statement.</summary>
    public Tonight? Tonight { get; init; }

    /// <summary>One plain sentence: what is done and why, in metric units. Made anew at each call.</summary>
    public string Why => Sentence.Of(this);
}
