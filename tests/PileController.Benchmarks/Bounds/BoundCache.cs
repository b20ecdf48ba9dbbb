using System.Security.Cryptography;
using System.Text.Json;
using PileController.Control;
using PileController.Control.Regulation;
using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// Bounds kept on disk under a hash of all they hang on: plant, limits, weather, days, and this search. What the
/// controller is told and what its probes say is no part of it: rigs that differ in that alone share a bound.
/// </summary>
internal static class BoundCache
{
    // Raised with every change of the search or the plant's equations.
    private const int Version = 5;

    public static string Key(SeasonPlan season, int rounds)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        void Add(object value) => hash.AppendData(JsonSerializer.SerializeToUtf8Bytes(value));
        ControlSettings c = season.Control;
        Add(new { Version, rounds, season.StartUtcMilliseconds, season.Days });
        Add(season.Build);
        Add(new
        {
            c.HouseMinimumC,
            c.HeapFloorC,
            c.LeastRunSeconds,
            c.LeastRestSeconds,
            c.DutySlewPerSecond,
            c.BlowerFitted,
            c.Limits,
        });
        // A pump whose duty is set was all there was when the first bounds were kept.
        if (c.Drive != PumpDrive.Duty)
        {
            Add(new { c.Drive, c.PumpLeastRunSeconds, c.ThrottledDuty });
        }

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
