using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;

namespace PileController.EndToEnd.Tests.Demo;

/// <summary>The program itself, serving its demo in a process of its own.</summary>
internal sealed class DemoProcess : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private const string PageWords = "The page is at ";
    private const string PassphraseWords = "Passphrase for this run: ";
    private readonly Process _process;

    private DemoProcess(Process process, Uri address)
    {
        _process = process;

        // A certificate made for a test is signed by nobody; this client talks to that one process alone.
        Client = new HttpClient(new HttpClientHandler { ServerCertificateCustomValidationCallback = HttpClientHandler.DangerousAcceptAnyServerCertificateValidator })
        {
            BaseAddress = address,
        };
    }

    public HttpClient Client { get; }

    /// <summary>The passphrase it printed, or null.</summary>
    public string? Passphrase { get; private init; }

    /// <summary>Starts it, waits until it has said where its page is, and signs in with the passphrase it printed.</summary>
    public static async Task<DemoProcess> StartAsync(string dataDirectory, double speed = 60)
    {
        DemoProcess demo = await OpenAsync("--data", dataDirectory, "--urls", "http://127.0.0.1:0", "--speed", $"{speed:R}");
        await demo.SignInAsync(demo.Passphrase!);
        return demo;
    }

    /// <summary>Starts it and waits until it has said where its page is.</summary>
    /// <param name="args">What follows the word serve.</param>
    public static async Task<DemoProcess> OpenAsync(params string[] args)
    {
        Process process = Start(["serve", .. args]);
        using CancellationTokenSource patience = new(Patience);
        // One that does not come up in time must not go on in the background.
        using CancellationTokenRegistration impatient = patience.Token.Register(process.Kill);
        string? passphrase = null;
        while (await process.StandardOutput.ReadLineAsync(patience.Token) is { } line)
        {
            if (line.StartsWith(PassphraseWords, StringComparison.Ordinal))
            {
                passphrase = line[PassphraseWords.Length..];
            }

            if (line.StartsWith(PageWords, StringComparison.Ordinal))
            {
                return new DemoProcess(process, new Uri(line[PageWords.Length..])) { Passphrase = passphrase };
            }
        }

        throw new InvalidOperationException($"It ended without a page: {await process.StandardError.ReadToEndAsync(patience.Token)}");
    }

    /// <summary>Signs its client in.</summary>
    public async Task<HttpResponseMessage> SignInAsync(string passphrase)
    {
        HttpResponseMessage answer = await Client.PostAsJsonAsync("/api/session", new { passphrase, name = "Robin" });
        if (answer.IsSuccessStatusCode)
        {
            JsonElement session = await answer.Content.ReadFromJsonAsync<JsonElement>();
            Client.DefaultRequestHeaders.Remove("X-Pile-Token");
            Client.DefaultRequestHeaders.Add("X-Pile-Token", session.GetProperty("token").GetString());

            // Where a change comes from, as a page says it.
            Client.DefaultRequestHeaders.Remove("Origin");
            Client.DefaultRequestHeaders.Add("Origin", Client.BaseAddress!.GetLeftPart(UriPartial.Authority));
        }

        return answer;
    }

    /// <summary>Runs a command to its end.</summary>
    public static Task<(int ExitCode, string Output)> RunAsync(params string[] args) => RunWithInputAsync(null, args);

    /// <summary>Runs a command to its end, with a text in its pipe.</summary>
    public static async Task<(int ExitCode, string Output)> RunWithInputAsync(string? input, params string[] args)
    {
        using Process process = Start(args);
        await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, output + await error);
    }

    /// <summary>What the newest tick tells; waited for where the page is up before the first.</summary>
    public async Task<JsonElement> NowAsync()
    {
        using CancellationTokenSource patience = new(Patience);
        while (true)
        {
            using HttpResponseMessage answer = await Client.GetAsync("/api/now", patience.Token);
            if (answer.StatusCode != HttpStatusCode.ServiceUnavailable)
            {
                return await answer.EnsureSuccessStatusCode().Content.ReadFromJsonAsync<JsonElement>(patience.Token);
            }

            await Task.Delay(50, patience.Token);
        }
    }

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
        ProcessStartInfo start = new("dotnet") { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "PileController.dll"));
        foreach (string arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        return Process.Start(start)!;
    }
}
