using PileController.Access;

namespace PileController.Panel.Guard;

/// <summary>Why somebody is turned away.</summary>
/// <param name="Status">Status of the answer.</param>
/// <param name="Title">What is the matter.</param>
/// <param name="Reason">What is needed.</param>
internal sealed record Refusal(int Status, string Title, string Reason);

/// <summary>Decides who a request comes from and whether they may.</summary>
internal static class EntryGate
{
    /// <summary>Header of a session's second secret.</summary>
    public const string TokenHeader = "X-Pile-Token";

    private const string BearerWord = "Bearer ";

    /// <summary>Who calls, and why they are turned away, or null.</summary>
    public static (Caller Caller, Refusal? Refusal) Check(HttpContext context, AccessDesk desk)
    {
        Need need = Needing.Of(context);
        bool local = Sources.IsLocal(context);
        if (!desk.Locked)
        {
            return local || need.Scope == Scope.None && !Needing.IsChange(context.Request)
                ? (local ? Caller.AtThisMachine : Caller.Nobody, null)
                : (Caller.Nobody, NotSignedIn("No passphrase is set on this controller. Until one is, it lets in its own machine only."));
        }

        (Caller caller, Refusal? forged) = Find(context.Request, desk);
        return (caller, forged ?? CheckSite(context.Request, caller) ?? CheckSecond(context.Request, need, caller) ?? CheckScope(context.Request, need, caller, local, desk.Setup));
    }

    /// <summary>Whether a caller who was let in may look at what the rig does, by the same rule as a route that needs <see cref="Scope.Look"/>.</summary>
    public static bool MayLook(HttpContext context, Caller caller, AccessDesk desk)
    {
        bool local = Sources.IsLocal(context);
        return desk.Locked ? MayLook(caller, local, desk.Setup) : local;
    }

    /// <summary>Whether a caller who was let in some time ago may still look: for an answer that goes on.</summary>
    public static bool MayStillLook(HttpContext context, Caller caller, AccessDesk desk) =>
        MayLook(context, caller.Mark is { } mark && !desk.Stands(mark) ? Caller.Nobody : caller, desk);

    /// <summary>Why a caller cannot steer now, or null when nothing is in the way.</summary>
    public static string? WhyNotSteer(HttpContext context, Caller caller, AccessSetup setup) =>
        !caller.Scopes.Cover(Scope.Steer) ? caller.By is null ? "Sign in to change anything." : "This key may not steer."
        : IsPlainFromAfar(context.Request, Sources.IsLocal(context)) && !setup.AllowPlainSteering ? PlainReason
        : null;

    private const string PlainReason =
        "Over plain http anyone on the way can read and use what is sent, so nothing can be changed from another machine. Needed: https (panel.certificate), or panel.allowPlainSteering true.";

    private static (Caller Caller, Refusal? Forged) Find(HttpRequest request, AccessDesk desk)
    {
        if (request.Headers.Authorization is { Count: > 0 } authorization)
        {
            string given = authorization.ToString();
            ScriptToken? token = given.StartsWith(BearerWord, StringComparison.OrdinalIgnoreCase)
                ? desk.Keys.FindToken(given[BearerWord.Length..].Trim())
                : null;
            return token is null
                ? (Caller.Nobody, NotSignedIn("Authorization: this key is not known, or was taken back. Allowed: \"Bearer\" and a key that stands."))
                : (new Caller(token.Scopes, "token", token.Name, Mark: token.Mark), null);
        }

        string? secret = SessionCookie.Read(request);
        return secret is not null && desk.Find(secret) is { } session
            ? (new Caller(Scope.Steer, "session", session.Name, session, secret, session.Mark), null)
            : (Caller.Nobody, null);
    }

    // A browser says of every change where it was begun, so a session's change that does not say so comes from none. What
    // is said was held against this machine before (RequestGate).
    private static Refusal? CheckSite(HttpRequest request, Caller caller) =>
        caller.Session is null || !Needing.IsChange(request) || RequestGate.SaysItsOwnSite(request)
            ? null
            : new Refusal(
                StatusCodes.Status403Forbidden, "Not from this page",
                "Origin: nothing is given. With a session's cookie a change must say where it comes from: Origin, or Sec-Fetch-Site: same-origin. A script brings a key instead (Authorization: Bearer).");

    private static Refusal? CheckSecond(HttpRequest request, Need need, Caller caller) =>
        caller.Secret is not { } secret || need.Tokenless || !Needing.IsChange(request)
        || SecretText.Same(request.Headers[TokenHeader].ToString(), SecretText.Second(secret))
            ? null
            : new Refusal(
                StatusCodes.Status403Forbidden, "Not from this page",
                $"{TokenHeader}: {(request.Headers.ContainsKey(TokenHeader) ? "this one is not the session's" : "nothing is given")}. Allowed: the token that /api/session gives to whoever is signed in.");

    private static Refusal? CheckScope(HttpRequest request, Need need, Caller caller, bool local, AccessSetup setup)
    {
        if (need.Scope == Scope.None || (need.Scope == Scope.Look && MayLook(caller, local, setup)))
        {
            return null;
        }

        if (!caller.Scopes.Cover(need.Scope))
        {
            return caller.By is null
                ? NotSignedIn($"Nobody is signed in. Needed: a session (POST /api/session), or a key that may {Worded(need.Scope)}.")
                : new Refusal(StatusCodes.Status403Forbidden, "Not allowed", $"The key \"{caller.Name}\" may not {Worded(need.Scope)}.");
        }

        return Needing.IsChange(request) && IsPlainFromAfar(request, local) && !setup.AllowPlainSteering
            ? new Refusal(StatusCodes.Status403Forbidden, "Not over plain http", PlainReason)
            : null;
    }

    private static bool MayLook(Caller caller, bool local, AccessSetup setup) => local || setup.LookOnLan || caller.Scopes.Cover(Scope.Look);

    private static bool IsPlainFromAfar(HttpRequest request, bool local) => !request.IsHttps && !local;

    private static Refusal NotSignedIn(string reason) => new(StatusCodes.Status401Unauthorized, "Not signed in", reason);

    private static string Worded(Scope scope) => WireNames.Of(scope);
}
