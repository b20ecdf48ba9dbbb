using PileController.Control.Estimation;

namespace PileController.Control.Foresight;

/// <summary>What the horizon is to look ahead from: heap and house as believed, and the hours to come.</summary>
public readonly ref struct HorizonTask
{
    /// <summary>What the controller is told.</summary>
    public required ControlSettings Settings { get; init; }

    /// <summary>The heap as told and learned.</summary>
    public required HeapFigures Heap { get; init; }

    /// <summary>Its temperatures, °C: <see cref="HeapShape.Nodes"/> of them.</summary>
    public required ReadOnlySpan<double> HeapC { get; init; }

    /// <summary>What the active zone has to stay above, °C: the floor and the margin for what the belief may be wrong by.</summary>
    public required double LeastZoneC { get; init; }

    /// <summary>What comfort leaves in the heap, K above the floor.</summary>
    public required double ReserveKelvin { get; init; }

    /// <summary>The house's model.</summary>
    public required HouseModel House { get; init; }

    /// <summary>The house now.</summary>
    public required HouseState HouseNow { get; init; }

    /// <summary>Mean air outside of each hour, °C; its length is how far is looked.</summary>
    public required ReadOnlySpan<double> OutsideC { get; init; }

    /// <summary>What the house gains beyond draw in each hour, W.</summary>
    public required ReadOnlySpan<double> GainW { get; init; }

    /// <summary>Now.</summary>
    public required Instant At { get; init; }
}
