using static PileController.Units.Factors;

namespace PileController.Units;

/// <summary>All units the program understands, one row each. The first row of a dimension is its plain metric one.</summary>
public static class UnitTable
{
    private static readonly Unit[] Rows =
    [
        Shifted("°C", 1, 273.15m, "Celsius", "degrees C"),
        Shifted("°F", KelvinPerRankine, 459.67m, "Fahrenheit", "degrees F"),
        Shifted("K", 1, 0, "kelvin"),

        Row("K", Dimension.TemperatureDifference, 1, "kelvin"),
        Row("°C", Dimension.TemperatureDifference, 1, "Celsius", "degrees C"),
        Row("°F", Dimension.TemperatureDifference, KelvinPerRankine, "Fahrenheit", "degrees F"),

        Row("m", Dimension.Length, 1, "metre", "metres", "meter", "meters"),
        Row("cm", Dimension.Length, 0.01m),
        Row("mm", Dimension.Length, 0.001m),
        Row("ft", Dimension.Length, Foot, "foot", "feet"),
        Row("in", Dimension.Length, Inch, "inch", "inches"),
        Row("yd", Dimension.Length, 3 * Foot, "yard", "yards"),

        Row("m2", Dimension.Area, 1, "sq m"),
        Row("cm2", Dimension.Area, 0.0001m),
        Row("mm2", Dimension.Area, 0.000001m),
        Row("ft2", Dimension.Area, Foot * Foot, "sq ft", "sqft"),
        Row("in2", Dimension.Area, Inch * Inch, "sq in"),

        Row("L", Dimension.Volume, Litre, "litre", "litres", "liter", "liters"),
        Row("mL", Dimension.Volume, Litre / 1000),
        Row("m3", Dimension.Volume, 1, "cu m"),
        Row("gal", Dimension.Volume, UsGallon, "US gal", "gallon", "gallons", "US gallon", "US gallons"),
        Row("imp gal", Dimension.Volume, ImperialGallon, "imperial gal", "imperial gallon", "imperial gallons", "UK gal"),
        Row("ft3", Dimension.Volume, CubicFoot, "cu ft", "cuft"),
        Row("yd3", Dimension.Volume, 27 * CubicFoot, "cu yd"),
        Row("cord", Dimension.Volume, 128 * CubicFoot, "cords"),

        Row("kg", Dimension.Mass, 1),
        Row("g", Dimension.Mass, 0.001m, "gram", "grams"),
        Row("t", Dimension.Mass, 1000, "tonne", "tonnes", "metric ton", "metric tons"),
        Row("lb", Dimension.Mass, Pound, "lbs", "pound", "pounds"),
        Row("short ton", Dimension.Mass, 2000 * Pound, "short tons", "US ton", "US tons"),
        Row("long ton", Dimension.Mass, 2240 * Pound, "long tons", "imperial ton", "imperial tons"),

        Row("s", Dimension.Time, 1, "sec", "second", "seconds"),
        Row("min", Dimension.Time, Minute, "minute", "minutes"),
        Row("h", Dimension.Time, Hour, "hr", "hour", "hours"),
        Row("d", Dimension.Time, 24 * Hour, "day", "days"),

        Row("L/min", Dimension.Flow, Litre / Minute, "lpm"),
        Row("L/s", Dimension.Flow, Litre),
        Row("L/h", Dimension.Flow, Litre / Hour),
        Row("m3/s", Dimension.Flow, 1),
        Row("m3/h", Dimension.Flow, 1 / Hour),
        Row("gal/min", Dimension.Flow, UsGallon / Minute, "gpm", "US gal/min", "US gpm"),
        Row("gal/h", Dimension.Flow, UsGallon / Hour, "gph", "US gal/h"),
        Row("imp gal/min", Dimension.Flow, ImperialGallon / Minute, "imperial gal/min", "UK gal/min", "imp gpm"),
        Row("ft3/min", Dimension.Flow, CubicFoot / Minute, "cfm", "cu ft/min"),

        Row("W", Dimension.Power, 1, "watt", "watts"),
        Row("kW", Dimension.Power, 1000),
        Row("BTU/h", Dimension.Power, Btu / Hour, "BTU/hr", "BTUH"),
        Row("hp", Dimension.Power, Horsepower),

        Row("J", Dimension.Energy, 1),
        Row("kJ", Dimension.Energy, 1000),
        Row("MJ", Dimension.Energy, 1_000_000),
        Row("GJ", Dimension.Energy, 1_000_000_000),
        Row("Wh", Dimension.Energy, Hour),
        Row("kWh", Dimension.Energy, 1000 * Hour),
        Row("BTU", Dimension.Energy, Btu),
        Row("therm", Dimension.Energy, UsTherm, "therms", "US therm"),

        Row("J/K", Dimension.HeatCapacity, 1),
        Row("kJ/K", Dimension.HeatCapacity, 1000),
        Row("MJ/K", Dimension.HeatCapacity, 1_000_000),
        Row("Wh/K", Dimension.HeatCapacity, Hour),
        Row("kWh/K", Dimension.HeatCapacity, 1000 * Hour),
        Row("BTU/°F", Dimension.HeatCapacity, Btu / KelvinPerRankine),

        Row("J/kgK", Dimension.SpecificHeat, 1),
        Row("kJ/kgK", Dimension.SpecificHeat, 1000),
        Row("BTU/lb°F", Dimension.SpecificHeat, Btu / Pound / KelvinPerRankine),

        Row("J/m2K", Dimension.AreaHeatCapacity, 1),
        Row("kJ/m2K", Dimension.AreaHeatCapacity, 1000),
        Row("Wh/m2K", Dimension.AreaHeatCapacity, Hour),
        Row("BTU/ft2°F", Dimension.AreaHeatCapacity, Btu / (Foot * Foot) / KelvinPerRankine),

        Row("W/K", Dimension.Conductance, 1),
        Row("kW/K", Dimension.Conductance, 1000),
        Row("BTU/h°F", Dimension.Conductance, Btu / Hour / KelvinPerRankine),

        Row("W/mK", Dimension.Conductivity, 1),
        Row("BTU/hft°F", Dimension.Conductivity, Btu / Hour / Foot / KelvinPerRankine),

        Row("W/m2K", Dimension.Transmittance, 1),
        Row("BTU/hft2°F", Dimension.Transmittance, Btu / Hour / (Foot * Foot) / KelvinPerRankine),

        Row("Pa", Dimension.Pressure, 1),
        Row("hPa", Dimension.Pressure, 100, "mbar"),
        Row("kPa", Dimension.Pressure, 1000),
        Row("bar", Dimension.Pressure, 100_000),
        Row("psi", Dimension.Pressure, Psi),
        Row("inH2O", Dimension.Pressure, InchOfWater, "in H2O", "in water", "in wc"),

        Row("V", Dimension.Voltage, 1, "volt", "volts"),
        Row("mV", Dimension.Voltage, 0.001m),

        Row("A", Dimension.Current, 1, "amp", "amps", "ampere", "amperes"),
        Row("mA", Dimension.Current, 0.001m),

        Row("1/s", Dimension.Rate, 1, "per s", "/s"),
        Row("1/min", Dimension.Rate, 1 / Minute, "per min", "/min"),
        Row("1/h", Dimension.Rate, 1 / Hour, "per h", "/h", "ach"),
        Row("%/s", Dimension.Rate, 0.01m),
        Row("Hz", Dimension.Rate, 1, "hertz"),
        Row("kHz", Dimension.Rate, 1000),
        Row("%/min", Dimension.Rate, 0.01m / Minute),

        Row("1/L", Dimension.PulsesPerVolume, 1 / Litre, "pulses/L", "/L"),
        Row("1/gal", Dimension.PulsesPerVolume, 1 / UsGallon, "pulses/gal", "/gal"),

        Row("%", Dimension.Share, 0.01m, "percent"),

        Row("ppm", Dimension.GasShare, 1),

        Row("kg/m3", Dimension.Density, 1),
        Row("lb/ft3", Dimension.Density, Pound / CubicFoot),
        Row("lb/yd3", Dimension.Density, Pound / (27 * CubicFoot)),

        Row("m/s", Dimension.Speed, 1),
        Row("km/h", Dimension.Speed, 1000 / Hour, "kph"),
        Row("mi/h", Dimension.Speed, 5280 * Foot / Hour, "mph"),
        Row("ft/min", Dimension.Speed, Foot / Minute, "fpm"),

        Row("ohm", Dimension.Resistance, 1, "ohms", "Ω"),
        Row("kohm", Dimension.Resistance, 1000, "kΩ"),
        Row("milliohm", Dimension.Resistance, 0.001m, "milliohms", "mΩ"),
    ];

    /// <summary>All units.</summary>
    public static IReadOnlyList<Unit> All => Rows;

    /// <summary>The unit of <paramref name="dimension"/> whose symbol is exactly <paramref name="symbol"/>.</summary>
    /// <exception cref="ArgumentException">No such unit: a slip in the program, not of its user.</exception>
    public static Unit Of(string symbol, Dimension dimension) =>
        Array.Find(Rows, u => u.Dimension == dimension && u.Symbol == symbol)
        ?? throw new ArgumentException($"No unit \"{symbol}\" for {DimensionTable.Of(dimension).Name}.", nameof(symbol));

    private static Unit Row(string symbol, Dimension dimension, decimal scale, params string[] others) =>
        new(symbol, dimension, scale, 0, others);

    private static Unit Shifted(string symbol, decimal scale, decimal shift, params string[] others) =>
        new(symbol, Dimension.Temperature, scale, shift, others);
}
