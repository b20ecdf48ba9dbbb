using System.Security.Cryptography;
using System.Text.Json;
using PileController.Control;
using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>Bounds kept on disk under a hash of everything they hang on: rig, limits, weather, days, and this search.</summary>
internal static class BoundCache
{
    // Raised with every change of the search or the plant's equations.
    private const int Version = 1;

    public static string Key(SeasonPlan season, int rounds)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        void Add(object value) => hash.AppendData(JsonSerializer.SerializeToUtf8Bytes(value));
        ControlSettings same = season.Control with { Policy = DrawPolicy.None };
        Add(new { Version, rounds, season.StartUtcMilliseconds, season.Days, season.OffsetMinutes });
        Add(season.Build);
        Add(same);
        Add(season.Rig);
        Add(new
        {
            season.Weather.FirstHourUtcMilliseconds,
            season.Weather.OutsideC,
            season.Weather.SunWPerM2,
            season.Weather.WindMPerS,
            season.Weather.Humidity,
        });
        return Convert.ToHexStringLower(hash.GetHashAndReset())[..32];
    }

    public static BoundResult? Read(string directory, string key)
    {
        string path = PathOf(directory, key);
        try
        {
            return File.Exists(path) ? JsonSerializer.Deserialize<BoundResult>(File.ReadAllText(path)) : null;
        }
        catch (JsonException)
        {
            // Half a file is no bound: it is found again.
            return null;
        }
    }

    public static void Write(string directory, string key, BoundResult result)
    {
        Directory.CreateDirectory(directory);
        string path = PathOf(directory, key);
        string half = path + ".new";
        File.WriteAllText(half, JsonSerializer.Serialize(result));
        File.Move(half, path, true);
    }

    private static string PathOf(string directory, string key) => Path.Combine(directory, $"{key}.json");
}
