using PileController.Access;

namespace PileController.Panel.Guard;

/// <summary>What a route needs of who calls it. Without one, reading needs <see cref="Scope.Look"/> and all else <see cref="Scope.Steer"/>.</summary>
/// <param name="Scope">The scope.</param>
/// <param name="Tokenless">Whether a session's second secret need not be shown: for what opens a session.</param>
internal sealed record Need(Scope Scope, bool Tokenless = false);

/// <summary>Says what a route needs.</summary>
internal static class Needing
{
    /// <summary>Sets it.</summary>
    public static T Needs<T>(this T route, Scope scope, bool tokenless = false)
        where T : IEndpointConventionBuilder =>
        route.WithMetadata(new Need(scope, tokenless));

    /// <summary>What a request needs. Goes by the route that was found, so no spelling of a path gets around it.</summary>
    public static Need Of(HttpContext context) =>
        context.GetEndpoint()?.Metadata.GetMetadata<Need>() ?? new Need(IsChange(context.Request) ? Scope.Steer : Scope.Look);

    /// <summary>Whether a request may change something.</summary>
    public static bool IsChange(HttpRequest request) => !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method);
}
