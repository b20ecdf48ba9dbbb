using System.Net;
using System.Net.Sockets;
using System.Text;

namespace PileController.Benchmarks.Pages;

/// <summary>Serves a page of one sentence: what browser and machine take for themselves.</summary>
internal sealed class BlankPage : IDisposable
{
    private const string Page = "<!doctype html><html lang=en><title>Blank</title><link rel=icon href='data:,'><p>One sentence and nothing else.</p>";
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);

    private BlankPage()
    {
        _listener.Start();
        Address = new Uri($"http://127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port}/");
    }

    /// <summary>Where it is.</summary>
    public Uri Address { get; }

    /// <summary>Begins to serve.</summary>
    public static BlankPage Serve()
    {
        BlankPage page = new();
        _ = page.AnswerAsync();
        return page;
    }

    /// <inheritdoc/>
    public void Dispose() => _listener.Dispose();

    private async Task AnswerAsync()
    {
        try
        {
            while (true)
            {
                _ = AnswerAsync(await _listener.AcceptTcpClientAsync());
            }
        }
        catch (SocketException)
        {
            // No longer served.
        }
        catch (ObjectDisposedException)
        {
            // The same.
        }
    }

    // A browser opens connections ahead of need, so each is answered by itself.
    private static async Task AnswerAsync(TcpClient client)
    {
        using (client)
        {
            NetworkStream stream = client.GetStream();
            if (await stream.ReadAsync(new byte[8192]) > 0)
            {
                await stream.WriteAsync(Encoding.ASCII.GetBytes(
                    $"HTTP/1.1 200 OK\r\nContent-Type: text/html\r\nContent-Length: {Page.Length}\r\nConnection: close\r\n\r\n{Page}"));
            }
        }
    }
}
