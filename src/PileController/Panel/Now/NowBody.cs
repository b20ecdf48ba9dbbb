namespace PileController.Panel.Now;

/// <summary>The moment, as it goes over the wire. SI, the unit in the key.</summary>
internal sealed record NowBody
{
    public required string Holding { get; init; }

    public required bool Demo { get; init; }

    public required double Speed { get; init; }

    public required string Units { get; init; }

    /// <summary>True seconds since the tick was told; not the demo's.</summary>
    public required double NewsAgeSeconds { get; init; }

    public required long UtcMs { get; init; }

    public required string LocalTime { get; init; }

    public required int OffsetMinutes { get; init; }

    /// <summary>By whose rules other moments are told; null where the offset never changes.</summary>
    public required string? Zone { get; init; }

    public required double TickSeconds { get; init; }

    public required long Sequence { get; init; }

    public required string Mode { get; init; }

    public required long ModeSinceUtcMs { get; init; }

    public required string Why { get; init; }

    /// <summary>The same sentence in °F, BTU/h and gal/min.</summary>
    public required string WhyAmerican { get; init; }

    public required string? Note { get; init; }

    public required string Curb { get; init; }

    public required double? WantWatts { get; init; }

    public required double? MeansWatts { get; init; }

    public required double? GrantWatts { get; init; }

    public required double? WaterDrawWatts { get; init; }

    public required double? WaterDrawErrorWatts { get; init; }

    public required double? AirDrawWatts { get; init; }

    public required bool DrawInferred { get; init; }

    public required double? FlowLitresPerMinute { get; init; }

    public required double? HouseSetPointC { get; init; }

    public required double HouseMinimumC { get; init; }

    public required double HeapFloorC { get; init; }

    public required double HeapFireC { get; init; }

    public required JudgedBody Judged { get; init; }

    public required EstimateBody Estimate { get; init; }

    public required OutputsBody Outputs { get; init; }

    public required FittedBody Fitted { get; init; }

    public required IReadOnlyList<ReadingBody> Readings { get; init; }

    public required IReadOnlyList<InterlockBody> Interlocks { get; init; }

    /// <summary>What the interlocks that act do with the actuators, whatever is asked of those; empty while all is free.</summary>
    public required IReadOnlyList<RestraintBody> Restraints { get; init; }

    /// <summary>Ids of the interlocks that have latched.</summary>
    public required IReadOnlyList<string> Trips { get; init; }

    /// <summary>What of the alarms asks for a person.</summary>
    public required AlarmsNowBody Alarms { get; init; }

    public required IReadOnlyList<HandBody> Hands { get; init; }

    public required TotalsBody Totals { get; init; }

    public required RecordBody Record { get; init; }

    public required ServiceBody Service { get; init; }

    public required HeapBody Heap { get; init; }

    /// <summary>What is believed of the heap along its radius: [radiusM, °C] from the middle out; null while nothing is trusted.</summary>
    public required double[][]? HeapField { get; init; }

    /// <summary>The faults put into the demo's rig; null on a real rig.</summary>
    public required IReadOnlyList<FaultBody>? Faults { get; init; }
}
