using System.Text.Json;

namespace PileController.Alarms.Push;

/// <summary>Posts messages as JSON. Any answer from 200 to 299 counts as taken; it follows no redirects.</summary>
internal sealed class WebhookSink(Uri address) : IPushSink, IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private readonly HttpClient _client = new(new SocketsHttpHandler { AllowAutoRedirect = false, UseProxy = false, ConnectTimeout = Patience })
    {
        Timeout = Patience,
        MaxResponseContentBufferSize = 64 * 1024,
    };

    /// <inheritdoc/>
    public string Name => "The webhook";

    /// <inheritdoc/>
    public Task SendAsync(PushMessage message, CancellationToken cancellation) => PostAsync(message, cancellation);

    /// <summary>Posts anything as JSON.</summary>
    /// <exception cref="HttpRequestException">It was not taken.</exception>
    public async Task PostAsync<T>(T body, CancellationToken cancellation)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, address) { Content = JsonContent.Create(body, options: JsonSerializerOptions.Web) };
        using HttpResponseMessage answer = await _client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancellation).ConfigureAwait(false);
        if (!answer.IsSuccessStatusCode)
        {
            throw new HttpRequestException($"It answered {(int)answer.StatusCode}.");
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _client.Dispose();
}
