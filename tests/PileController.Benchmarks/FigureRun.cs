using System.Text.Json;

namespace PileController.Benchmarks;

/// <summary>Runs a benchmark whose figures are printed as JSON, and written to a file where one is asked for.</summary>
internal static class FigureRun
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <summary>Runs it.</summary>
    /// <param name="jsonFile">The file, or null.</param>
    /// <param name="output">Where the figures go.</param>
    /// <param name="error">Where it is told what the disk refused.</param>
    /// <param name="measure">Measures. What it gives away meanwhile is written to the file at once, so that a long run that is stopped leaves it.</param>
    /// <returns>0, or 2 when the disk refused.</returns>
    public static async Task<int> RunAsync(string? jsonFile, TextWriter output, TextWriter error, Func<Func<object, Task>, Task<object>> measure)
    {
        try
        {
            // A file that cannot be written is told now, and not in an hour.
            await WriteAsync(new { });
            object figures = await measure(WriteAsync);
            output.WriteLine(JsonSerializer.Serialize(figures, Json));
            await WriteAsync(figures);
            return 0;
        }
        catch (IOException refused)
        {
            error.WriteLine(refused.Message);
            return 2;
        }

        Task WriteAsync(object figures) =>
            jsonFile is null ? Task.CompletedTask : File.WriteAllTextAsync(jsonFile, JsonSerializer.Serialize(figures, Json) + "\n");
    }
}
