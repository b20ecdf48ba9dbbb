using PileController.Access;
using PileController.Panel.Commands;

namespace PileController.Panel.Guard;

/// <summary>A key of a script, as it is listed.</summary>
internal sealed record TokenBody(string Name, IReadOnlyList<string> Scopes, long MadeUtcMs, string MadeBy, long? UsedUtcMs, int OffsetMinutes);

/// <summary>A key just made; its secret is told this once.</summary>
internal sealed record NewTokenBody(string Name, IReadOnlyList<string> Scopes, string Token);

/// <summary><c>/api/tokens</c>: keys for scripts. People manage them; a key makes and takes back no keys.</summary>
internal static class TokensApi
{
    /// <summary>Adds the routes.</summary>
    public static void Map(RouteGroupBuilder api)
    {
        RouteGroupBuilder tokens = api.MapGroup("/tokens").Needs(Scope.Steer).AddEndpointFilter(PeopleOnlyAsync);
        tokens.MapGet("", (AccessDesk desk, PanelSetup setup) => TypedResults.Ok(desk.Keys.Tokens().Select(token => BodyOf(token, setup)).ToArray()));
        tokens.MapPost("", MakeAsync);
        tokens.MapDelete("", Revoke);
    }

    private static async Task<IResult> MakeAsync(HttpContext context, AccessDesk desk)
    {
        BodyFields body = await BodyFields.ReadAsync(context.Request, "name", "scopes");
        string name = body.Text("name", SessionApi.LongestName) ?? throw BodyFields.Fault("name", "nothing", $"1 to {SessionApi.LongestName} characters of text");
        string[] words = body.Words("scopes", 1, 3);
        Scope scopes = words.Select(word => WireNames.Parse<Scope>(word, "scopes")).Aggregate(Scope.None, (all, one) => all | one);
        if (scopes == Scope.None)
        {
            throw BodyFields.Fault("scopes", "none", "look, forecast, steer");
        }

        Caller caller = Told.Of(context).Caller;
        return desk.Keys.Make(name, scopes, caller.Name ?? Sources.Shown(context.Connection.RemoteIpAddress)) is var (secret, token)
            ? TypedResults.Created((string?)null, new NewTokenBody(token.Name, WireNames.Flags(token.Scopes), secret))
            : Answers.Refused(
                StatusCodes.Status409Conflict, "No such key can be made", $"There is a key \"{name}\" already, or there are {KeyRing.MostTokens} keys. Take one back first.");
    }

    private static IResult Revoke(AccessDesk desk, string? name) =>
        name is null ? throw BodyFields.Fault("name", "nothing", "the name of a key")
        : desk.Keys.Revoke(name) ? TypedResults.NoContent()
        : Answers.Refused(StatusCodes.Status404NotFound, "No such key", $"There is no key \"{name}\".");

    private static TokenBody BodyOf(ScriptToken token, PanelSetup setup) => new(
        token.Name, WireNames.Flags(token.Scopes), token.MadeUtcMilliseconds, token.MadeBy, token.UsedUtcMilliseconds,
        setup.OffsetMinutesAt(token.UsedUtcMilliseconds ?? token.MadeUtcMilliseconds));

    private static async ValueTask<object?> PeopleOnlyAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        Told told = Told.Of(context.HttpContext);
        if (told.Caller.By != "token")
        {
            return await next(context);
        }

        told.Why = "Keys are made and taken back by people who are signed in, not by keys.";
        return Answers.Refused(StatusCodes.Status403Forbidden, "Not allowed", told.Why);
    }
}
