using System.Diagnostics;
using System.Net.Http.Json;
using System.Text.Json;

namespace PileController.EndToEnd.Tests.Demo;

/// <summary>The program itself, serving its demo in a process of its own.</summary>
internal sealed class DemoProcess : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private readonly Process _process;

    private DemoProcess(Process process, Uri address)
    {
        _process = process;
        Client = new HttpClient { BaseAddress = address };
    }

    public HttpClient Client { get; }

    /// <summary>Starts it and waits until it has said where its page is.</summary>
    public static async Task<DemoProcess> StartAsync(string dataDirectory, double speed = 60)
    {
        Process process = Start("serve", "--data", dataDirectory, "--urls", "http://127.0.0.1:0", "--speed", $"{speed:R}");
        using CancellationTokenSource patience = new(Patience);
        while (await process.StandardOutput.ReadLineAsync(patience.Token) is { } line)
        {
            if (line.StartsWith("The page is at ", StringComparison.Ordinal))
            {
                return new DemoProcess(process, new Uri(line["The page is at ".Length..]));
            }
        }

        throw new InvalidOperationException($"It ended without a page: {await process.StandardError.ReadToEndAsync(patience.Token)}");
    }

    /// <summary>Runs a command to its end.</summary>
    public static async Task<(int ExitCode, string Output)> RunAsync(params string[] args)
    {
        using Process process = Start(args);
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, output + await error);
    }

    public Task<JsonElement> NowAsync() => Client.GetFromJsonAsync<JsonElement>("/api/now");

    /// <summary>Asks until the answer fits, and hands it back.</summary>
    public async Task<JsonElement> UntilAsync(Func<JsonElement, bool> fits)
    {
        using CancellationTokenSource patience = new(Patience);
        while (true)
        {
            JsonElement now = await NowAsync();
            if (fits(now))
            {
                return now;
            }

            await Task.Delay(50, patience.Token);
        }
    }

    public Task<HttpResponseMessage> PostAsync(string path, object body) => Client.PostAsJsonAsync(path, body);

    /// <summary>Ends it as a service manager does.</summary>
    public async Task StopAsync()
    {
        using (Process signal = Process.Start("kill", ["-TERM", $"{_process.Id}"]))
        {
            await signal.WaitForExitAsync();
        }

        await _process.WaitForExitAsync();
    }

    /// <summary>Ends it as a pulled plug does.</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            await KillAsync();
        }

        Client.Dispose();
        _process.Dispose();
    }

    private static Process Start(params string[] args)
    {
        ProcessStartInfo start = new("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "PileController.dll"));
        foreach (string arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        return Process.Start(start)!;
    }
}
