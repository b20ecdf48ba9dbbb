using System.Collections.Concurrent;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace PileController.Tests.Alarms.Push;

/// <summary>A server on a free port of the loopback that keeps what is posted to it, and answers as it is told.</summary>
internal sealed class LocalHttp : IAsyncDisposable
{
    private readonly WebApplication _app;

    private LocalHttp(WebApplication app) => _app = app;

    public ConcurrentQueue<JsonElement> Bodies { get; } = new();

    public int Answers { get; set; } = 200;

    public Uri Address => new(_app.Urls.First() + "/hook");

    public static async Task<LocalHttp> StartAsync()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Logging.ClearProviders();
        LocalHttp server = new(builder.Build());
        server._app.MapPost("/hook", async (HttpRequest request) =>
        {
            server.Bodies.Enqueue((await JsonSerializer.DeserializeAsync<JsonElement>(request.Body)).Clone());
            return Results.StatusCode(server.Answers);
        });
        await server._app.StartAsync();
        return server;
    }

    public async ValueTask DisposeAsync() => await _app.DisposeAsync();
}
