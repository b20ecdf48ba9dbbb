using System.Text.Json;
using Microsoft.Playwright;

namespace PileController.Benchmarks.Pages;

/// <summary>How frames followed one another.</summary>
internal sealed record Drawn(double FramesPerSecond, double LongestMilliseconds, double Milliseconds);

/// <summary>Frames by the browser's own tracing.</summary>
internal sealed class FrameTrace
{
    // What the browser calls the moment a frame is handed to the screen.
    private const string FrameEvent = "DrawFrame";
    private const string Categories = "disabled-by-default-devtools.timeline.frame,devtools.timeline.frame";
    private readonly ICDPSession _wire;
    private readonly List<double> _frames = [];
    private readonly TaskCompletionSource _complete = new();

    private FrameTrace(ICDPSession wire) => _wire = wire;

    /// <summary>Begins to trace.</summary>
    public static async Task<FrameTrace> BeginAsync(ICDPSession wire)
    {
        FrameTrace trace = new(wire);
        wire.Event("Tracing.dataCollected").OnEvent += (_, told) => trace.Take(told!.Value.GetProperty("value"));
        wire.Event("Tracing.tracingComplete").OnEvent += (_, _) => trace._complete.TrySetResult();
        await wire.SendAsync("Tracing.start", new Dictionary<string, object> { ["categories"] = Categories, ["transferMode"] = "ReportEvents" });
        return trace;
    }

    /// <summary>Ends it and counts.</summary>
    /// <exception cref="IOException">The browser told of no frames.</exception>
    public async Task<Drawn> EndAsync()
    {
        await _wire.SendAsync("Tracing.end");
        await _complete.Task;
        double[] at = [.. _frames.Order()];
        if (at.Length < 2)
        {
            throw new IOException("The browser's tracing told of no frames.");
        }

        double lasted = at[^1] - at[0];
        double longest = at.Zip(at.Skip(1), (one, next) => next - one).Max();
        return new Drawn(Math.Round((at.Length - 1) / lasted * 1000, 1), Math.Round(longest, 1), Math.Round(lasted));
    }

    private void Take(JsonElement events)
    {
        foreach (JsonElement one in events.EnumerateArray())
        {
            if (one.TryGetProperty("name", out JsonElement name) && name.GetString() == FrameEvent)
            {
                _frames.Add(one.GetProperty("ts").GetDouble() / 1000);
            }
        }
    }
}
