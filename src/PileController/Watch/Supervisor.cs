using System.Globalization;
using Microsoft.Extensions.Hosting.Systemd;

namespace PileController.Watch;

/// <summary>
/// Speaks to the service manager (sd_notify): ready once, a sign of life while all is well, stopping at the end. It
/// outlives the hosts that a change of settings builds one after another, so that none of those looks like the end.
/// </summary>
internal sealed class Supervisor(Action<string> notify) : ISignOfLife
{
    private string? _status;

    /// <summary>The supervisor this program runs under, or one that hears nothing.</summary>
    public static Supervisor Find()
    {
        SystemdNotifier notifier = new();
        return new Supervisor(text =>
        {
            if (notifier.IsEnabled)
            {
                notifier.Notify(new ServiceState(text));
            }
        });
    }

    /// <summary>The service runs.</summary>
    public void Ready() => notify("READY=1");

    /// <summary>The service ends.</summary>
    public void Stopping() => notify("STOPPING=1");

    /// <summary>What is under way takes longer than the service manager's usual time.</summary>
    /// <param name="wanted">How long from now.</param>
    public void TakesLonger(TimeSpan wanted) =>
        notify(string.Create(CultureInfo.InvariantCulture, $"EXTEND_TIMEOUT_USEC={(long)wanted.TotalMicroseconds}"));

    /// <inheritdoc/>
    public void Say(string? sickness)
    {
        if (sickness is null)
        {
            notify("WATCHDOG=1");
        }

        string status = sickness ?? "Well.";
        if (status != _status)
        {
            _status = status;
            notify($"STATUS={status}");
        }
    }
}
