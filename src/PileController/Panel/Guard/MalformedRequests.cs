using System.Diagnostics;
using Microsoft.AspNetCore.Http.Features;
using PileController.Access;

namespace PileController.Panel.Guard;

/// <summary>Tells the journal of requests that the server turns away before anybody else sees them: malformed, too slow, too large a head.</summary>
internal sealed class MalformedRequests(DiagnosticListener listener, AccessDesk desk) : IHostedService, IObserver<KeyValuePair<string, object?>>, IDisposable
{
    private const string BadRequest = "Microsoft.AspNetCore.Server.Kestrel.BadRequest";
    private IDisposable? _listening;

    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken)
    {
        _listening = listener.Subscribe(this, (name, _, _) => name == BadRequest);
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public void OnNext(KeyValuePair<string, object?> value)
    {
        if (value is { Key: BadRequest, Value: IFeatureCollection features }
            && features.Get<IBadRequestExceptionFeature>()?.Error is Microsoft.AspNetCore.Http.BadHttpRequestException error)
        {
            desk.Journal.Add(
                null, Sources.Shown(features.Get<IHttpConnectionFeature>()?.RemoteIpAddress), null, "a malformed request", false, error.StatusCode,
                Reason(error.StatusCode));
        }
    }

    /// <inheritdoc/>
    public void OnCompleted()
    {
    }

    /// <inheritdoc/>
    public void OnError(Exception error)
    {
    }

    /// <inheritdoc/>
    public void Dispose() => _listening?.Dispose();

    /// <summary>Why the server read no further.</summary>
    /// <param name="status">Status of the answer.</param>
    public static string Reason(int status) => status switch
    {
        StatusCodes.Status408RequestTimeout => "It came too slowly.",
        StatusCodes.Status413PayloadTooLarge => "Its body is too large.",
        StatusCodes.Status414UriTooLong or StatusCodes.Status431RequestHeaderFieldsTooLarge => "Its head is too large.",
        _ => "It is no request that can be read.",
    };
}
