using System.Diagnostics;

namespace PileController.Benchmarks.Records;

/// <summary>Times questions to a store.</summary>
internal static class QuestionClock
{
    private const int Rounds = 15;

    /// <summary>Asks one question of a store just opened, then again and again.</summary>
    public static async Task<QuestionTime> TimeAsync(Func<Task<string>> ask)
    {
        (double first, string answer) = await OnceAsync(ask);
        List<double> times = [];
        for (int round = 0; round < Rounds; round++)
        {
            times.Add((await OnceAsync(ask)).Milliseconds);
        }

        times.Sort();
        return new QuestionTime(Math.Round(first, 1), Math.Round(times[Rounds / 2], 1), Math.Round(times[^1], 1), answer);
    }

    private static async Task<(double Milliseconds, string Answer)> OnceAsync(Func<Task<string>> ask)
    {
        long began = Stopwatch.GetTimestamp();
        string answer = await ask();
        return (Stopwatch.GetElapsedTime(began).TotalMilliseconds, answer);
    }
}
