using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Plants;

/// <summary>
/// The greenhouse of a holding by itself, with no heap and no water running: what the weather alone makes of it. It
/// costs a small part of a whole plant.
/// </summary>
public sealed class LoneHouse
{
    private readonly WeatherSeries _weather;
    private readonly Dwelling _house;
    private readonly StandingWater _water;

    /// <summary>A house just taken into use, as <see cref="Plant.Fresh"/> has it.</summary>
    /// <param name="build">How house and loop are built; the heap is not looked at.</param>
    /// <param name="weather">The weather it stands in.</param>
    /// <param name="utcMilliseconds">When it is taken into use.</param>
    public LoneHouse(PlantBuild build, WeatherSeries weather, long utcMilliseconds)
    {
        _weather = weather;
        double startC = Dwelling.FreshC(weather.At(utcMilliseconds).OutsideC);
        _house = new Dwelling(build.House, Dwelling.Fresh(build.House, startC), default);
        _water = new StandingWater(build.Loop, startC);
        UtcMilliseconds = utcMilliseconds;
    }

    /// <summary>Wall time, ms since 1970-01-01T00:00Z.</summary>
    public long UtcMilliseconds { get; private set; }

    /// <summary>Air, °C.</summary>
    public double HouseC => _house.AirC;

    /// <summary>Lets it live for a while.</summary>
    /// <param name="seconds">How long, s; above 0. The step is not cut.</param>
    /// <param name="heatW">Heat put into its air, W.</param>
    public void Step(double seconds, double heatW)
    {
        UtcMilliseconds += (long)Math.Round(seconds * 1000);
        WeatherSample sky = _weather.At(UtcMilliseconds);
        double waterJ = _water.Step(seconds, _house.AirC);
        _house.Step(seconds, waterJ + (seconds * heatW), sky.OutsideC, sky.SunWPerM2);
    }
}
