using Microsoft.Extensions.DependencyInjection.Extensions;

namespace PileController.Service;

/// <summary>Adds the tick loop to a host.</summary>
public static class ServiceModule
{
    /// <summary>
    /// Adds the loop and what it shares with the panel: <see cref="CommandInbox"/>, <see cref="PanelFeed"/>,
    /// <see cref="TickTrail"/> and <see cref="TickCounts"/>. The host must also have an <c>IRig</c> and an <c>IPileRecord</c>.
    /// </summary>
    /// <param name="services">The host's services.</param>
    /// <param name="settings">What the loop is told at start.</param>
    /// <param name="clock">The clock that paces ticks; a <see cref="SpedClock"/> in the demo.</param>
    /// <param name="realTime">True time, by which the age of news is told; the system's when null.</param>
    public static IServiceCollection AddTicks(
        this IServiceCollection services, TickSettings settings, TimeProvider clock, TimeProvider? realTime = null)
    {
        services.TryAddSingleton(settings);
        services.TryAddSingleton(new CommandInbox(settings.Start.Sequence + 1));
        services.TryAddSingleton(new PanelFeed(realTime ?? TimeProvider.System));
        services.TryAddSingleton<TickTrail>();
        services.TryAddSingleton<TickCounts>();
        services.TryAddSingleton<TickRunner>();
        services.AddHostedService(provider => ActivatorUtilities.CreateInstance<TickLoop>(provider, clock));

        // An open page must not hold up the stop, and so the safe outputs.
        services.Configure<HostOptions>(options =>
        {
            options.ShutdownTimeout = TimeSpan.FromSeconds(5);

            // A service that dies beside the loop must not look like a wanted stop; what it was to prove is then not proven.
            options.BackgroundServiceExceptionBehavior = BackgroundServiceExceptionBehavior.Ignore;
        });
        return services;
    }
}
