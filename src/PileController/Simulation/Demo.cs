using System.Reflection;
using PileController.Physics.Sky;
using PileController.Physics.Sky.Weather;

namespace PileController.Simulation;

/// <summary>What ships inside the program for the demo.</summary>
internal static class Demo
{
    public const string WeatherFileName = "alder-bank-weather.csv";

    /// <summary>The demo's settings: Alder Bank's, every key explained.</summary>
    public const string SettingsFileName = "alder-bank.json";

    /// <summary>Days of history that are made before the page opens.</summary>
    public const int HistoryDays = 14;

    /// <summary>The day the demo's heap is built.</summary>
    public static DateOnly Built { get; } = new(2025, 11, 1);

    /// <summary>Days from then to the warm start.</summary>
    public const int WarmDays = 77;

    /// <summary>The demo's weather, with its sun reckoned for a place.</summary>
    public static WeatherSeries Weather(Place place)
    {
        using StreamReader reader = new(Open(WeatherFileName));
        return WeatherFile.Read(reader, WeatherFileName, place);
    }

    /// <summary>The text of the demo's settings.</summary>
    public static string SettingsText()
    {
        using StreamReader reader = new(Open(SettingsFileName));
        return reader.ReadToEnd();
    }

    /// <summary>A file that ships inside the program.</summary>
    public static Stream Open(string name) =>
        Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
        ?? throw new InvalidOperationException($"{name} is not inside the program.");
}
