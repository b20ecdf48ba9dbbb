namespace PileController.Units;

/// <summary>How a dimension is spoken of.</summary>
/// <param name="Name">With its article: "a flow".</param>
/// <param name="Example">A quantity of it as a person writes it.</param>
public sealed record DimensionInfo(string Name, string Example);

/// <summary>The table of all dimensions, in the order of <see cref="Dimension"/>.</summary>
public static class DimensionTable
{
    private static readonly DimensionInfo[] Rows =
    [
        new("a temperature", "45 °C"),
        new("a temperature difference", "5 K"),
        new("a length", "12 m"),
        new("an area", "62 m2"),
        new("a volume", "208 L"),
        new("a mass", "9000 kg"),
        new("a time", "10 min"),
        new("a flow", "4 L/min"),
        new("a power", "2 kW"),
        new("an energy", "3 kWh"),
        new("a heat capacity", "20 MJ/K"),
        new("a specific heat", "4.19 kJ/kgK"),
        new("a heat capacity per area", "30 kJ/m2K"),
        new("a heat loss per kelvin", "220 W/K"),
        new("a conductivity or loss per length", "0.25 W/mK"),
        new("a heat transmittance", "3.3 W/m2K"),
        new("a pressure", "101325 Pa"),
        new("a voltage", "12 V"),
        new("a current", "1.5 A"),
        new("a rate", "0.75 1/h"),
        new("pulses per volume", "450 1/L"),
        new("a share", "30 %"),
        new("a density", "300 kg/m3"),
        new("a speed", "6 m/s"),
        new("a resistance", "2.2 kohm"),
        new("a share of a gas in air", "5000 ppm"),
    ];

    /// <summary>How <paramref name="dimension"/> is spoken of.</summary>
    public static DimensionInfo Of(Dimension dimension) => Rows[(int)dimension];
}
