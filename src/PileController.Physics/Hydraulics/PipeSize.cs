namespace PileController.Physics.Hydraulics;

/// <summary>A pipe as it is sold.</summary>
/// <param name="Name">Nominal size and kind, as in "1/2 in PEX".</param>
/// <param name="OuterDiameterM">Outside diameter, m.</param>
/// <param name="InnerDiameterM">Average bore, m.</param>
/// <param name="WallWPerMK">Conductivity of the wall, W/(m·K) (0.41 for cross-linked polyethylene, 390 for copper, both from memory).</param>
/// <param name="WallJPerM3K">
/// Heat capacity of the wall, J/(m³·K) (cross-linked polyethylene 940 kg/m³ × 2300 J/(kg·K), copper 8940 × 385, both from memory).
/// </param>
public sealed record PipeSize(string Name, double OuterDiameterM, double InnerDiameterM, double WallWPerMK, double WallJPerM3K)
{
    private const double Inch = 0.0254;

    /// <summary>
    /// The sizes known by name. PEX: SDR-9, average bores after ASTM F876/F877 (3/8 in from memory).
    /// Copper: type L, from memory, but 1/4 in, which is named by its outside as a thin restriction or sensing line is (from memory).
    /// </summary>
    public static IReadOnlyList<PipeSize> All { get; } =
    [
        Pex("3/8 in PEX", 0.500, 0.350),
        Pex("1/2 in PEX", 0.625, 0.475),
        Pex("5/8 in PEX", 0.750, 0.574),
        Pex("3/4 in PEX", 0.875, 0.671),
        Pex("1 in PEX", 1.125, 0.863),
        Copper("1/4 in copper", 0.250, 0.190),
        Copper("3/8 in copper", 0.500, 0.430),
        Copper("1/2 in copper", 0.625, 0.545),
        Copper("5/8 in copper", 0.750, 0.666),
        Copper("3/4 in copper", 0.875, 0.785),
        Copper("1 in copper", 1.125, 1.025),
    ];

    /// <summary>The size of a name in any order and letter case: "1/2 in PEX", "pex 1/2\"", "copper 0.75 inch".</summary>
    /// <param name="name">One of the names in <see cref="All"/>.</param>
    /// <exception cref="ArgumentException">No such size; the message lists those there are.</exception>
    public static PipeSize Named(string name) =>
        Find(name) ?? throw new ArgumentException($"No pipe size \"{name}\"; known are {string.Join(", ", All.Select(size => size.Name))}.", nameof(name));

    /// <summary>The size of a name, or null when there is none.</summary>
    /// <param name="name">As in <see cref="Named"/>.</param>
    public static PipeSize? Find(string name)
    {
        string key = PipeName.Key(name);
        return All.FirstOrDefault(size => PipeName.Key(size.Name) == key);
    }

    private static PipeSize Pex(string name, double outerInches, double innerInches) =>
        new(name, outerInches * Inch, innerInches * Inch, 0.41, 2.16e6);

    private static PipeSize Copper(string name, double outerInches, double innerInches) =>
        new(name, outerInches * Inch, innerInches * Inch, 390, 3.44e6);
}
