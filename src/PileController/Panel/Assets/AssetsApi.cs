using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Net.Http.Headers;
using PileController.Access;
using PileController.Panel.Guard;

namespace PileController.Panel.Assets;

/// <summary>Serves the page's files.</summary>
internal static class AssetsApi
{
    /// <summary>Adds a route for each file.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        PanelAssets assets = routes.ServiceProvider.GetRequiredService<PanelAssets>();
        foreach (string path in assets.Paths)
        {
            routes.MapMethods(path, Looking.Methods, (HttpContext context) => Serve(context, assets.Of(path))).Needs(Scope.None);
        }
    }

    private static FileContentHttpResult Serve(HttpContext context, PanelAsset asset)
    {
        // What keeps its name is asked for again each time, so that a new version is seen at once; the tag makes that cheap.
        context.Response.Headers.CacheControl = asset.Lasting ? "public, max-age=31536000, immutable" : "no-cache";
        context.Response.Headers.Vary = "Accept-Encoding";
        byte[] content = asset.Content;
        if (context.Request.Headers.AcceptEncoding.ToString().Contains("br", StringComparison.Ordinal))
        {
            context.Response.Headers.ContentEncoding = "br";
            content = asset.Brotli;
        }

        return TypedResults.Bytes(content, asset.Type, entityTag: new EntityTagHeaderValue(asset.Tag));
    }
}
