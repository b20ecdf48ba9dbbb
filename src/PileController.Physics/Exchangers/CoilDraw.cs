namespace PileController.Physics.Exchangers;

/// <summary>What a coil does at one moment of a steady draw.</summary>
/// <param name="OutletC">Water at the outlet, °C.</param>
/// <param name="DrawWatts">Heat drawn from the bed, W; negative where the water is the warmer.</param>
/// <param name="Effectiveness">Share of the way from inlet to bed, 0 to 1.</param>
/// <param name="Ntu">Number of transfer units.</param>
/// <param name="FilmMKPerW">Resistance of the water's film, m·K/W.</param>
/// <param name="WallMKPerW">Resistance of the pipe wall, m·K/W.</param>
/// <param name="BedMKPerW">Resistance of the bed by now, m·K/W.</param>
public readonly record struct CoilDraw(
    double OutletC, double DrawWatts, double Effectiveness, double Ntu, double FilmMKPerW, double WallMKPerW, double BedMKPerW);
