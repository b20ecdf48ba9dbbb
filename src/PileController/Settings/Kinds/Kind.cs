using PileController.Units;

namespace PileController.Settings.Kinds;

/// <summary>The kinds of value that the field tables are made of. Quantities: stored unit, then the one files are written in.</summary>
internal static class Kind
{
    public static ValueKind<bool> Flag { get; } = new FlagKind();

    public static ValueKind<double> TimeOfDay { get; } = new ClockKind();

    public static ValueKind<double> Celsius(double least, double most) => Quantity(Dimension.Temperature, "°C", "°C", least, most);

    public static ValueKind<double> Kelvin(double least, double most) =>
        Quantity(Dimension.TemperatureDifference, "K", "K", least, most);

    public static ValueKind<double> Metres(double least, double most) => Quantity(Dimension.Length, "m", "m", least, most);

    public static ValueKind<double> MetresAsMm(double least, double most) => Quantity(Dimension.Length, "m", "mm", least, most);

    public static ValueKind<double> SquareMetres(double least, double most) => Quantity(Dimension.Area, "m2", "m2", least, most);

    public static ValueKind<double> CubicMetres(double least, double most) => Quantity(Dimension.Volume, "m3", "m3", least, most);

    public static ValueKind<double> Litres(double least, double most) => Quantity(Dimension.Volume, "L", "L", least, most);

    public static ValueKind<double> Kilograms(double least, double most) => Quantity(Dimension.Mass, "kg", "kg", least, most);

    public static ValueKind<double> Seconds(double least, double most) => Quantity(Dimension.Time, "s", "s", least, most);

    public static ValueKind<double> Hours(double least, double most) => Quantity(Dimension.Time, "h", "h", least, most);

    public static ValueKind<double> Days(double least, double most) => Quantity(Dimension.Time, "d", "d", least, most);

    public static ValueKind<double> LitresPerMinute(double least, double most) =>
        Quantity(Dimension.Flow, "L/min", "L/min", least, most);

    public static ValueKind<double> AirM3PerS(double least, double most) => Quantity(Dimension.Flow, "m3/s", "m3/h", least, most);

    public static ValueKind<double> Watts(double least, double most) => Quantity(Dimension.Power, "W", "W", least, most);

    public static ValueKind<double> WattHours(double least, double most) => Quantity(Dimension.Energy, "Wh", "Wh", least, most);

    public static ValueKind<double> JoulesPerKelvin(double least, double most) =>
        Quantity(Dimension.HeatCapacity, "J/K", "MJ/K", least, most);

    public static ValueKind<double> JoulesPerM2Kelvin(double least, double most) =>
        Quantity(Dimension.AreaHeatCapacity, "J/m2K", "kJ/m2K", least, most);

    public static ValueKind<double> WattsPerKelvin(double least, double most) =>
        Quantity(Dimension.Conductance, "W/K", "W/K", least, most);

    public static ValueKind<double> WattsPerMetreKelvin(double least, double most) =>
        Quantity(Dimension.Conductivity, "W/mK", "W/mK", least, most);

    public static ValueKind<double> WattsPerM2Kelvin(double least, double most) =>
        Quantity(Dimension.Transmittance, "W/m2K", "W/m2K", least, most);

    public static ValueKind<double> Volts(double least, double most) => Quantity(Dimension.Voltage, "V", "V", least, most);

    public static ValueKind<double> Amperes(double least, double most) => Quantity(Dimension.Current, "A", "A", least, most);

    public static ValueKind<double> Ohms(double least, double most) => Quantity(Dimension.Resistance, "ohm", "ohm", least, most);

    public static ValueKind<double> PulsesPerSecond(double least, double most) => Quantity(Dimension.Rate, "1/s", "1/s", least, most);

    public static ValueKind<double> PerHour(double least, double most) => Quantity(Dimension.Rate, "1/h", "1/h", least, most);

    public static ValueKind<double> PerSecond(double least, double most) => Quantity(Dimension.Rate, "1/s", "%/s", least, most);

    public static ValueKind<double> Hertz(double least, double most) => Quantity(Dimension.Rate, "1/s", "Hz", least, most);

    public static ValueKind<double> PulsesPerLitre(double least, double most) =>
        Quantity(Dimension.PulsesPerVolume, "1/L", "1/L", least, most);

    public static ValueKind<double> PartsPerMillion(double least, double most) =>
        Quantity(Dimension.GasShare, "ppm", "ppm", least, most);

    public static ValueKind<double> KilogramsPerM3(double least, double most) =>
        Quantity(Dimension.Density, "kg/m3", "kg/m3", least, most);

    public static ValueKind<double> Share(double least, double most) => new ShareKind(least, most);

    public static ValueKind<double> Number(double least, double most, string meaning) => new NumberKind(least, most, meaning);

    /// <summary>A value that need not be there.</summary>
    public static ValueKind<T?> Optional<T>(ValueKind<T> kind)
        where T : struct => new OptionalKind<T>(kind);

    public static ValueKind<long?> Whole(long least, long most) => new WholeKind(least, most);

    public static ValueKind<long?> OptionalWhole(long least, long most) => new WholeKind(least, most, optional: true);

    /// <summary>An address of an I2C device, 7 bit; those below 0x08 and above 0x77 the bus keeps for itself (I2C-bus specification, from memory).</summary>
    public static ValueKind<int> BusAddress { get; } = Hex(0x08, 0x77);

    /// <summary>An address on a bus, in hexadecimal digits.</summary>
    public static ValueKind<int> Hex(int least, int most) => new HexKind(least, most);

    public static ValueKind<T> Word<T>(params IReadOnlyList<(string Word, T Meaning)> words) => new WordKind<T>(words);

    /// <summary>The names of an enumeration in camelCase.</summary>
    public static ValueKind<T> WordOf<T>()
        where T : struct, Enum =>
        new WordKind<T>([.. Enum.GetValues<T>().Select(v => (CamelCase(v.ToString()), v))]);

    public static ValueKind<string?> Text(string allowed, Predicate<string> isGood) => new TextKind(allowed, isGood);

    public static ValueKind<string?> OptionalText(string allowed, Predicate<string> isGood) =>
        new TextKind(allowed, isGood, optional: true);

    private static QuantityKind Quantity(Dimension dimension, string stored, string written, double least, double most) =>
        new(UnitTable.Of(stored, dimension), UnitTable.Of(written, dimension), least, most);

    private static string CamelCase(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}
