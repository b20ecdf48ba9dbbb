using System.Diagnostics;

namespace PileController.Benchmarks;

/// <summary>The program itself, serving a folder's holding at an address of its own; killed at the end.</summary>
internal sealed class Served : IDisposable
{
    private const string Words = "The page is at ";
    private readonly Process _process;

    private Served(Process process, Uri page)
    {
        _process = process;
        Page = page;
    }

    /// <summary>Where its page is.</summary>
    public Uri Page { get; }

    /// <summary>Number of its process.</summary>
    public int Id => _process.Id;

    /// <summary>Starts it and waits until it tells where its page is.</summary>
    /// <param name="folder">The record's folder.</param>
    /// <param name="speed">How many times faster than life.</param>
    /// <param name="cancellation">Ends the wait.</param>
    /// <exception cref="IOException">It ended before that.</exception>
    public static async Task<Served> StartAsync(string folder, double speed, CancellationToken cancellation)
    {
        ProcessStartInfo start = new("dotnet")
        {
            RedirectStandardOutput = true,
            ArgumentList =
            {
                Path.Combine(AppContext.BaseDirectory, "PileController.dll"), "serve", "--data", folder,
                "--urls", "http://127.0.0.1:0", "--speed", FormattableString.Invariant($"{speed:R}"),
            },
        };
        Process process = Process.Start(start)!;
        while (await process.StandardOutput.ReadLineAsync(cancellation) is { } line)
        {
            if (line.StartsWith(Words, StringComparison.Ordinal))
            {
                // What it says later is read and dropped: a full pipe would hold it up.
                _ = process.StandardOutput.ReadToEndAsync(CancellationToken.None);
                return new Served(process, new Uri(line[Words.Length..]));
            }
        }

        process.Dispose();
        throw new IOException("The program ended without a page.");
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _process.Kill();
        _process.WaitForExit();
        _process.Dispose();
    }
}
