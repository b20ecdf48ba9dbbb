namespace PileController.Physics.Recipes;

/// <summary>A published range for a heap that is to heat up by itself.</summary>
/// <param name="Kind">What it bounds: "moisture", "carbonToNitrogen", "bulkDensity" or "freeAirSpace".</param>
/// <param name="Least">Least acceptable.</param>
/// <param name="Most">Most acceptable.</param>
/// <param name="Source">Where it was published.</param>
public sealed record Band(string Kind, double Least, double Most, string Source)
{
    private const string Handbook = "The Composting Handbook (2021) ch. 4 table 4.2";

    /// <summary>Share of water, wet basis: 40 to 65 % (50 to 60 % is best).</summary>
    public static Band Moisture { get; } = new("moisture", 0.40, 0.65, Handbook);

    /// <summary>Carbon over nitrogen: 20 to 60 (25 to 40 is best).</summary>
    public static Band CarbonToNitrogen { get; } = new("carbonToNitrogen", 20, 60, Handbook);

    /// <summary>Bulk density: at most 1100 lb/yd³, in kg/m³, or air no longer passes.</summary>
    public static Band BulkDensity { get; } = new("bulkDensity", 0, 652.6, "Smith and Aber, article on recovering heat from compost");

    /// <summary>Share of air: at least 30 %, where Haug's factor for it still is 0.97; at 20 % it is 0.78.</summary>
    public static Band FreeAirSpace { get; } = new("freeAirSpace", 0.30, 1, "Haug 1993, factor for free air space");

    /// <summary>Whether a value lies in the band.</summary>
    public bool Holds(double value) => value >= Least && value <= Most;
}
