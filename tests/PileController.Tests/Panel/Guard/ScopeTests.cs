using PileController.Access;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Guard;

/// <summary>Every route there is, from another machine, with a key of each scope and with none.</summary>
public class ScopeTests
{
    private const string Passphrase = "warm chips in january";

    // Where one signs in, and what it takes to show that: open to anybody.
    private static readonly string[] Open =
    [
        "GET /", "GET /index.html", "GET /icon.svg", "GET /api/session", "POST /api/session", "POST /api/session/passphrase", "DELETE /api/session",
        // It asks by itself who calls.
        "DELETE /api/sessions",
    ];

    // Told to nobody who may not change anything either.
    private static readonly string[] Private = ["GET /api/access", "GET /api/tokens"];

    private static readonly string[] Forecasts = ["POST /api/forecast"];

    [Theory]
    [InlineData(null)]
    [InlineData(Scope.Look)]
    [InlineData(Scope.Forecast)]
    [InlineData(Scope.Steer)]
    public async Task Route_AnyOfThem_LetsInWhatTheScopeSaysAndNoMore(Scope? scope)
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        string? key = scope is { } its ? host.Access.Keys.Make("its", its, "Robin")!.Value.Secret : null;
        (string Method, string Path)[] routes = [.. host.Routes().Where(route => !route.Path.StartsWith("/js/", StringComparison.Ordinal) && !route.Path.StartsWith("/css/", StringComparison.Ordinal))];

        string[] letIn = [.. routes.Where(route => host.RefusedFromAfar(route.Method, route.Path, key) is null).Select(route => $"{route.Method} {route.Path}").Order()];

        string[] all = [.. routes.Select(route => $"{route.Method} {route.Path}")];
        Assert.Superset(Open.ToHashSet(), all.ToHashSet());
        string[] due = scope switch
        {
            null => Open,
            Scope.Look => [.. Open, .. all.Where(route => route.StartsWith("GET ", StringComparison.Ordinal)).Except(Private).Except(Open)],
            Scope.Forecast => [.. Open, .. Forecasts],
            _ => all,
        };
        Assert.Equal(due.Order(), letIn);
    }
}
