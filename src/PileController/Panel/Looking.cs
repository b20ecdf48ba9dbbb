namespace PileController.Panel;

/// <summary>How pages and files are asked for.</summary>
internal static class Looking
{
    /// <summary>
    /// GET, and HEAD for the same without its body (RFC 9110 has both for whatever can be looked at): what watches over a
    /// site asks with HEAD. The server leaves the body out by itself.
    /// </summary>
    public static readonly string[] Methods = [HttpMethods.Get, HttpMethods.Head];
}
