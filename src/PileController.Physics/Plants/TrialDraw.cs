namespace PileController.Physics.Plants;

/// <summary>How a trial draws on a heap.</summary>
public sealed record TrialDraw
{
    /// <summary>Water coming back to the heap, °C (0 to 60).</summary>
    public double ReturnC { get; init; } = 15;

    /// <summary>Flow while it draws, L/min (0 for no water, at most 100): that of the pump on its loop.</summary>
    public double FlowLitresPerMinute { get; init; } = 4;

    /// <summary>Air coming to the ducts, °C (-10 to 40).</summary>
    public double AirC { get; init; } = 10;

    /// <summary>Whether the blower runs along with the pump.</summary>
    public bool Blows { get; init; } = true;

    /// <summary>The floor, °C: temperature of the active zone that may not be undercut.</summary>
    public double FloorC { get; init; } = 45;

    /// <summary>How far above the floor the last draw ends, K (0 to 20).</summary>
    public double MarginKelvin { get; init; } = 1;

    /// <summary>How far above that the draw is full, K (above 0, at most 20); it grows in proportion between.</summary>
    public double BandKelvin { get; init; } = 6;

    /// <summary>Nothing is drawn before the active zone has been this hot for a day, °C.</summary>
    public double LitC { get; init; } = 50;

    /// <summary>Moisture that is held by wetting the heap, share of the wet mass (0 for none, at most 0.7).</summary>
    public double HeldMoisture { get; init; }

    /// <summary>Water a wetting day may bring, kg per kg of the heap as built: small drinks, so that none of them chills the heap.</summary>
    public double MostWettingShare { get; init; } = 0.01;

    /// <summary>Share of a full draw at a temperature of the active zone, 0 to 1.</summary>
    /// <param name="activeZoneC">Active zone, °C.</param>
    public double Share(double activeZoneC) =>
        Math.Clamp((activeZoneC - FloorC - MarginKelvin) / BandKelvin, 0, 1);
}
