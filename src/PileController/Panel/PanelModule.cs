using Microsoft.AspNetCore.Server.Kestrel.Core;
using PileController.Alarms;
using PileController.Ledgers;
using PileController.Panel.Alarms;
using PileController.Panel.Assets;
using PileController.Panel.Commands;
using PileController.Panel.Guard;
using PileController.Panel.Ledgers;
using PileController.Panel.Live;
using PileController.Panel.Nights;
using PileController.Panel.Now;
using PileController.Panel.Planning;
using PileController.Panel.Queries;

namespace PileController.Panel;

/// <summary>Adds the panel to a web host. The host must also have the ticks (<see cref="Service.ServiceModule"/>).</summary>
public static class PanelModule
{
    /// <summary>Longest request body, bytes: a command is a few dozen.</summary>
    public const long MostBodyBytes = 16 * 1024;

    /// <summary>Adds what the panel needs.</summary>
    /// <param name="services">The host's services.</param>
    /// <param name="setup">What the panel is told of the place.</param>
    public static IServiceCollection AddPanel(this IServiceCollection services, PanelSetup setup)
    {
        services.AddSingleton(setup);
        services.AddAlarms(setup);
        services.AddSingleton<NowReport>();
        services.AddSingleton<NowText>();
        services.AddSingleton<PanelAssets>();
        services.AddSingleton<PlanDesk>();
        services.AddSingleton<AheadDesk>();
        if (setup.Ledger is { } ledger)
        {
            services.AddSingleton(ledger);
            services.AddHostedService<LedgerWatch>();
        }

        services.AddProblemDetails();
        services.Configure<KestrelServerOptions>(options =>
        {
            options.AddServerHeader = false;
            options.Limits.MaxRequestBodySize = MostBodyBytes;
            options.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
        });
        return services;
    }

    /// <summary>Adds the guard, the calls and the page.</summary>
    /// <param name="app">The host.</param>
    public static void Map(WebApplication app)
    {
        app.Use(next => context => GuardMiddleware.RunAsync(context, next));
        app.UseExceptionHandler(new ExceptionHandlerOptions { StatusCodeSelector = StatusOf });
        app.UseStatusCodePages();

        RouteGroupBuilder api = app.MapGroup("/api").AddEndpointFilter(AnswerFieldFaultsAsync);
        NowApi.Map(api);
        StreamApi.Map(api);
        SamplesApi.Map(api);
        DecisionsApi.Map(api);
        HandApi.Map(api);
        TripsApi.Map(api);
        AlarmsApi.Map(api);
        ServicingApi.Map(api);
        FaultsApi.Map(api);
        ForecastApi.Map(api);
        TonightApi.Map(api);
        PlanApi.Map(api);
        AheadApi.Map(api);
        LedgerApi.Map(api);
        HealthApi.Map(app);
        AssetsApi.Map(app);
    }

    private static int StatusOf(Exception fault) =>
        fault is Microsoft.AspNetCore.Http.BadHttpRequestException bad ? bad.StatusCode : StatusCodes.Status500InternalServerError;

    private static async ValueTask<object?> AnswerFieldFaultsAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        try
        {
            return await next(context);
        }
        catch (FieldFaultException fault)
        {
            return Answers.BadField(fault.Fault);
        }
    }
}
