using System.Globalization;
using PileController.Physics.Plants;

namespace PileController.FarSide.Plants;

/// <summary>Where a thermometer hangs.</summary>
/// <param name="Name">A word of <see cref="Words"/>.</param>
/// <param name="RadiusM">Distance from the heap's axis, m; in the bed only.</param>
public sealed record ProbeSpot(string Name, double RadiusM)
{
    private const string Bed = "bed";

    /// <summary>The words that name a place.</summary>
    public static IReadOnlyList<string> Words { get; } =
        [Bed + ":RADIUS", "turns", "supply", "return", "tank", "house", "floor", "outside", "duct"];

    /// <summary>Time constant of the probe there, s: steel sleeve in bed or soil, pocket in water, still air (common practice, no source).</summary>
    public double LagSeconds => Name switch
    {
        Bed or "turns" or "floor" => 120,
        "supply" or "return" or "tank" => 15,
        _ => 60,
    };

    /// <summary>Reads "supply" or "bed:0.45".</summary>
    /// <exception cref="ArgumentException">It is neither.</exception>
    public static ProbeSpot Parse(string word)
    {
        string[] parts = word.Split(':');
        double radius = 0;
        bool isBed = parts[0] == Bed;
        bool isSound = isBed
            ? parts.Length == 2 && double.TryParse(parts[1], CultureInfo.InvariantCulture, out radius) && radius is >= 0 and <= 6
            : parts.Length == 1 && Words.Contains(word);
        return isSound
            ? new ProbeSpot(parts[0], radius)
            : throw new ArgumentException($"A probe's place is \"{word}\"; allowed: {string.Join(", ", Words)}, the radius in m, 0 to 6.");
    }

    /// <summary>The true temperature there, °C.</summary>
    public double TrueC(Plant plant) => Name switch
    {
        Bed => plant.Heap.AtRadiusC(RadiusM),
        "turns" => plant.Heap.NearTurnsC,
        "supply" => plant.SupplyC,
        "return" => plant.ReturnC,
        "tank" => plant.TankC,
        "house" => plant.HouseC,
        "floor" => plant.FloorC,
        "duct" => plant.DuctAirC,
        _ => plant.Sky.OutsideC,
    };
}
