using PileController.Physics.Houses;
using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Plants;

/// <summary>
/// The greenhouse of a holding by itself, with no heap and no water in it: what the weather alone makes of it. It
/// costs a hundredth of a whole plant.
/// </summary>
public sealed class LoneHouse
{
    private readonly WeatherSeries _weather;
    private readonly Dwelling _house;

    /// <summary>A house just taken into use, as <see cref="Plant.Fresh"/> has it.</summary>
    /// <param name="build">How it is built.</param>
    /// <param name="weather">The weather it stands in.</param>
    /// <param name="utcMilliseconds">When it is taken into use.</param>
    public LoneHouse(HouseBuild build, WeatherSeries weather, long utcMilliseconds)
    {
        _weather = weather;
        _house = new Dwelling(
            build, Dwelling.Fresh(build, Dwelling.FreshC(weather.At(utcMilliseconds).OutsideC)), default);
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
        _house.Step(seconds, seconds * heatW, sky.OutsideC, sky.SunWPerM2);
    }
}
