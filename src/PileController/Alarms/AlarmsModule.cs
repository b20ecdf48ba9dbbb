using Microsoft.Extensions.DependencyInjection.Extensions;
using PileController.Alarms.Push;
using PileController.Panel;
using PileController.Panel.Now;
using PileController.Service;
using PileController.Settings;

namespace PileController.Alarms;

/// <summary>Adds the alarms to a host: the board, its file, messages, heartbeat and lamp.</summary>
internal static partial class AlarmsModule
{
    /// <summary>Adds what the place has.</summary>
    /// <param name="services">The host's services.</param>
    /// <param name="setup">What is told of the place.</param>
    public static void AddAlarms(this IServiceCollection services, PanelSetup setup)
    {
        AlarmTable table = AlarmTable.Of(new AlarmPlace(setup.Control, setup.Interlocks, [.. setup.Rig.Probes.Select(probe => probe.Channel)])
        {
            NameOf = channel => ProbeWords.Label(setup.Rig.Probes, channel),
        });
        AlarmFile? file = setup.AlarmsFile is { } path ? new AlarmFile(path) : null;
        AlarmsSettings settings = setup.Settings.Alarms;
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton(new Punctuality(setup.TrueTick));
        services.AddSingleton(provider => new AlarmDesk(table, Kept(table, file, provider.GetRequiredService<ILogger<AlarmDesk>>())));
        services.AddSingleton<PushTroubles>();
        services.AddSingleton(provider => new AlarmKeeping(file, provider.GetRequiredService<AlarmDesk>().State.Number));
        services.AddHostedService<AlarmWatch>();
        if (settings.Webhook.Length > 0 || settings.Mail.Host.Length > 0)
        {
            services.AddHostedService(provider =>
                ActivatorUtilities.CreateInstance<AlarmPush>(provider, settings, setup.Holding, Sinks(settings, provider.GetRequiredService<TimeProvider>())));
        }

        if (settings.Heartbeat.Url.Length > 0)
        {
            services.AddHostedService(provider => ActivatorUtilities.CreateInstance<Heartbeat>(
                provider, new WebhookSink(new Uri(settings.Heartbeat.Url)), TimeSpan.FromSeconds(settings.Heartbeat.EverySeconds), setup.Holding));
        }

        if (setup.Lamp is { } lamp)
        {
            services.AddHostedService(provider => ActivatorUtilities.CreateInstance<LampWatch>(provider, lamp));
        }
    }

    private static List<IPushSink> Sinks(AlarmsSettings settings, TimeProvider time)
    {
        List<IPushSink> sinks = [];
        if (settings.Webhook.Length > 0)
        {
            sinks.Add(new WebhookSink(new Uri(settings.Webhook)));
        }

        if (settings.Mail.Host.Length > 0)
        {
            sinks.Add(new MailSink(settings.Mail, time));
        }

        return sinks;
    }

    // A disk that fails must not keep control from starting.
    private static AlarmState Kept(AlarmTable table, AlarmFile? file, ILogger logger)
    {
        try
        {
            string? trouble = null;
            AlarmState state = file?.Load(table, out trouble) ?? AlarmState.Fresh(table);
            if (trouble is not null)
            {
                LogTrouble(logger, trouble);
            }

            return state;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            LogTrouble(logger, $"The alarms that were kept cannot be read: {fault.Message}");
            return AlarmState.Fresh(table);
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "{What}")]
    private static partial void LogTrouble(ILogger logger, string what);
}
