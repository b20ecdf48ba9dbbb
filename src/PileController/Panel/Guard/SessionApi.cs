using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Access;
using PileController.Panel.Commands;

namespace PileController.Panel.Guard;

/// <summary>How somebody stands with the controller.</summary>
/// <param name="SignedIn">Whether a session or key is known.</param>
/// <param name="Name">Its name.</param>
/// <param name="Scopes">What it may do.</param>
/// <param name="NeedsPassphrase">Whether a passphrase is set, and so needed to change anything.</param>
/// <param name="Plain">Whether what is sent can be read on the way: http, from another machine.</param>
/// <param name="MayLook">Whether the page can be looked at.</param>
/// <param name="MaySteer">Whether anything can be changed.</param>
/// <param name="WhyNot">Why not, or null.</param>
/// <param name="Token">What the header X-Pile-Token must hold with every change; null without a session.</param>
/// <param name="Fault">Why the passphrase cannot be read, or null; told at this machine only, since it names a path.</param>
internal sealed record SessionBody(
    bool SignedIn, string? Name, IReadOnlyList<string> Scopes, bool NeedsPassphrase, bool Plain, bool MayLook, bool MaySteer,
    string? WhyNot, string? Token, string? Fault);

/// <summary><c>/api/session</c> and <c>/api/sessions</c>: sign in, out, and out everywhere.</summary>
internal static class SessionApi
{
    /// <summary>Longest name of a person or key.</summary>
    public const int LongestName = 40;

    private const string Unnamed = "somebody";

    /// <summary>Adds the routes.</summary>
    public static void Map(RouteGroupBuilder api)
    {
        api.MapGet("/session", (HttpContext context, AccessDesk desk) => TypedResults.Ok(BodyOf(context, desk, Told.Of(context).Caller)))
            .Needs(Scope.None);
        api.MapPost("/session", SignInAsync).Needs(Scope.None, tokenless: true);
        api.MapPost("/session/passphrase", SetAsync).Needs(Scope.None, tokenless: true);
        api.MapDelete("/session", SignOut).Needs(Scope.None);
        api.MapDelete("/sessions", SignOutEverywhere).Needs(Scope.None);
    }

    private static async Task<IResult> SignInAsync(HttpContext context, AccessDesk desk)
    {
        BodyFields body = await BodyFields.ReadAsync(context.Request, "passphrase", "name");
        string passphrase = Secret(body, "passphrase", 1);
        string name = body.Text("name", LongestName) ?? Unnamed;
        if (!desk.Locked)
        {
            return Answers.Refused(StatusCodes.Status409Conflict, "Nothing to sign in to", "No passphrase is set: at this machine everybody may do everything. The command PileController passphrase sets one.");
        }

        (string source, string from) = From(context);
        return await AnswerAsync(context, desk, desk.SignInAsync(passphrase, name, source, from), "The passphrase is not right.");
    }

    private static async Task<IResult> SetAsync(HttpContext context, AccessDesk desk)
    {
        BodyFields body = await BodyFields.ReadAsync(context.Request, "code", "passphrase", "name");
        string code = Secret(body, "code", 1);
        string passphrase = Secret(body, "passphrase", PassphraseRules.Shortest);
        string name = body.Text("name", LongestName) ?? Unnamed;
        (string source, string from) = From(context);
        return await AnswerAsync(
            context, desk, desk.SetByCodeAsync(code, passphrase, name, source, from),
            "The code is not right, was used, or is over. The command PileController passphrase --code makes one that works for 15 minutes.");
    }

    private static async Task<IResult> AnswerAsync(HttpContext context, AccessDesk desk, Task<SignIn> trying, string wrong)
    {
        Told told = Told.Of(context);
        SignIn sign = await trying;
        if (sign.WaitSeconds is int wait)
        {
            context.Response.Headers.RetryAfter = wait.ToString(CultureInfo.InvariantCulture);
            return Refuse(context, StatusCodes.Status429TooManyRequests, "Too many tries", $"Too many tries to sign in. Try again in {wait} s.");
        }

        if (sign.Session is not { } session)
        {
            return Refuse(context, StatusCodes.Status401Unauthorized, "Not signed in", wrong);
        }

        // The browser forgets its old cookie; nobody else should go on with it.
        if (told.Caller.Session is { } before)
        {
            desk.Keys.Close(before);
        }

        SessionCookie.Write(context, sign.Secret!);
        told.Caller = new Caller(Scope.Steer, "session", session.Name, session, sign.Secret, session.Mark);
        return TypedResults.Ok(BodyOf(context, desk, told.Caller));
    }

    private static NoContent SignOut(HttpContext context, AccessDesk desk)
    {
        if (Told.Of(context).Caller.Session is { } session)
        {
            desk.Keys.Close(session);
        }

        SessionCookie.Clear(context);
        return TypedResults.NoContent();
    }

    private static IResult SignOutEverywhere(HttpContext context, AccessDesk desk)
    {
        Told told = Told.Of(context);
        if (told.Caller.By is not ("session" or "loopback") && !told.Caller.Scopes.Cover(Scope.Steer))
        {
            return Refuse(context, StatusCodes.Status401Unauthorized, "Not signed in", "Nobody is signed in. Needed: a session (POST /api/session).");
        }

        desk.Keys.CloseAll();
        SessionCookie.Clear(context);
        return TypedResults.NoContent();
    }

    private static ProblemHttpResult Refuse(HttpContext context, int status, string title, string reason)
    {
        Told.Of(context).Why = reason;
        if (status == StatusCodes.Status401Unauthorized)
        {
            context.Response.Headers.WWWAuthenticate = GuardMiddleware.Challenge;
        }

        return Answers.Refused(status, title, reason);
    }

    private static SessionBody BodyOf(HttpContext context, AccessDesk desk, Caller caller)
    {
        bool local = Sources.IsLocal(context);
        string? whyNot = EntryGate.WhyNotSteer(context, caller, desk.Setup);
        return new SessionBody(
            caller.By is "session" or "token", caller.Name, WireNames.Flags(caller.Scopes), desk.Locked, !context.Request.IsHttps && !local,
            local || desk.Setup.LookOnLan || caller.Scopes.Cover(Scope.Look), whyNot is null, whyNot,
            caller.Secret is { } secret ? SecretText.Second(secret) : null, local ? desk.Fault : null);
    }

    private static (string Source, string From) From(HttpContext context) =>
        (Sources.Of(context.Connection.RemoteIpAddress), Sources.Shown(context.Connection.RemoteIpAddress));

    // A secret is never told back, not even where it is refused.
    private static string Secret(BodyFields body, string field, int shortest) =>
        body.Secret(field, shortest, PassphraseRules.Longest) ?? throw BodyFields.Fault(field, "this text", $"{shortest} to {PassphraseRules.Longest} characters without control characters");
}
