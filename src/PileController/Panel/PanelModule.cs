using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using PileController.Access;
using PileController.Alarms;
using PileController.Ledgers;
using PileController.Panel.Alarms;
using PileController.Panel.Assets;
using PileController.Panel.Commands;
using PileController.Panel.Commissioning;
using PileController.Panel.Editing;
using PileController.Panel.Guard;
using PileController.Panel.Ledgers;
using PileController.Panel.Live;
using PileController.Panel.Nights;
using PileController.Panel.Now;
using PileController.Panel.Planning;
using PileController.Panel.Queries;
using PileController.Panel.Sight;

namespace PileController.Panel;

/// <summary>Adds the panel to a web host. The host must also have the ticks (<see cref="Service.ServiceModule"/>).</summary>
public static class PanelModule
{
    /// <summary>Longest request body, bytes: a command is a few dozen.</summary>
    public const long MostBodyBytes = 16 * 1024;

    /// <summary>Adds what the panel needs.</summary>
    /// <param name="services">The host's services.</param>
    /// <param name="setup">What the panel is told of the place.</param>
    /// <param name="access">Who may come in; outlives the host.</param>
    internal static IServiceCollection AddPanel(this IServiceCollection services, PanelSetup setup, AccessDesk access)
    {
        ConnectionBound bound = new(access);
        services.AddSingleton(setup);
        services.AddSingleton(access);
        services.AddSingleton(bound);
        services.AddHostedService<AccessKeeper>();
        services.AddHostedService<MalformedRequests>();
        services.AddAlarms(setup);
        services.AddSingleton<NowReport>();
        services.AddSingleton<NowText>();
        services.AddSingleton<PanelAssets>();
        services.AddSingleton<SightPage>();
        services.AddSingleton<PlanDesk>();
        services.AddSingleton<AheadDesk>();
        services.AddSingleton<CommissioningDesk>();
        services.AddHostedService(provider => provider.GetRequiredService<CommissioningDesk>());
        if (setup.Ledger is { } ledger)
        {
            services.AddSingleton(ledger);
            services.AddHostedService<LedgerWatch>();
        }

        services.AddProblemDetails();
        services.AddResponseCompression(options =>
        {
            options.EnableForHttps = true;
            options.MimeTypes = ["application/json", "text/csv", "text/html"];
        });
        services.Configure<KestrelServerOptions>(options =>
        {
            options.AddServerHeader = false;
            options.Limits.MaxRequestBodySize = MostBodyBytes;
            options.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
            options.Limits.KeepAliveTimeout = TimeSpan.FromMinutes(1);
            options.Limits.MaxRequestHeadersTotalSize = 16 * 1024;
            options.Limits.MaxRequestHeaderCount = 60;
            options.Limits.MinRequestBodyDataRate = new MinDataRate(bytesPerSecond: 240, gracePeriod: TimeSpan.FromSeconds(5));
            options.ConfigureEndpointDefaults(listen =>
            {
                // One kind of connection, so that one set of limits holds.
                listen.Protocols = HttpProtocols.Http1;
                bound.Apply(listen);
            });
        });
        return services;
    }

    /// <summary>Adds the guard, the calls and the page.</summary>
    /// <param name="app">The host.</param>
    public static void Map(WebApplication app)
    {
        AccessDesk access = app.Services.GetRequiredService<AccessDesk>();
        ConnectionBound bound = app.Services.GetRequiredService<ConnectionBound>();
        app.Use(next => context =>
        {
            bound.Spoke(context.Connection.Id);
            return GuardMiddleware.RunAsync(context, next, access);
        });

        // Figures shrink to a tenth. The session's secrets are never told beside what another site could put in, and the
        // event stream and the page's files (packed once each) are other types.
        app.UseResponseCompression();
        app.UseExceptionHandler(new ExceptionHandlerOptions
        {
            StatusCodeSelector = StatusOf,

            // Whoever sends what is refused could otherwise fill the log: three kilobytes of trace a request.
            SuppressDiagnosticsCallback = fault => fault.Exception is Microsoft.AspNetCore.Http.BadHttpRequestException,
        });
        app.UseStatusCodePages();

        RouteGroupBuilder api = app.MapGroup("/api").AddEndpointFilter(AnswerFaultsAsync);
        NowApi.Map(api);
        StreamApi.Map(api);
        SamplesApi.Map(api);
        DecisionsApi.Map(api);
        DecisionApi.Map(api);
        HandApi.Map(api);
        TripsApi.Map(api);
        AlarmsApi.Map(api);
        ServicingApi.Map(api);
        CommissioningApi.Map(api);
        FaultsApi.Map(api);
        ForecastApi.Map(api);
        TonightApi.Map(api);
        DayApi.Map(api);
        PlanApi.Map(api);
        AheadApi.Map(api);
        LedgerApi.Map(api);
        SettingsApi.Map(api);
        SessionApi.Map(api);
        TokensApi.Map(api);
        AccessApi.Map(api);
        HealthApi.Map(app);
        AssetsApi.Map(app);
        SightApi.Map(app);
    }

    // The server stopped reading: the journal is told why, and by which route it came.
    private static ProblemHttpResult Refused(HttpContext context, int status)
    {
        string reason = MalformedRequests.Reason(status);
        Told.Of(context).Why = reason;
        return Answers.Refused(status, "Not read", reason);
    }

    private static int StatusOf(Exception fault) =>
        fault is Microsoft.AspNetCore.Http.BadHttpRequestException bad ? bad.StatusCode : StatusCodes.Status500InternalServerError;

    private static async ValueTask<object?> AnswerFaultsAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        try
        {
            return await next(context);
        }
        catch (FieldFaultException fault)
        {
            return Answers.BadField(fault.Fault);
        }
        catch (Microsoft.AspNetCore.Http.BadHttpRequestException fault)
        {
            return Refused(context.HttpContext, fault.StatusCode);
        }
        catch (AccessFileException)
        {
            return Answers.Refused(
                StatusCodes.Status503ServiceUnavailable, "Cannot be kept", "It could not be written into the folder of the data, so it may not outlive a restart. Look at the card and its free space.");
        }
    }
}
