using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace PileController.Access;

/// <summary>Secrets that machines remember: 256 random bits, so a fast hash keeps them.</summary>
internal static class SecretText
{
    private const int Bytes = 32;

    /// <summary>A new secret, of letters, digits, "-" and "_".</summary>
    public static string Make() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>What is kept of a secret: it can be found by it and not made from it.</summary>
    public static string Mark(string secret) => Base64Url.EncodeToString(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    /// <summary>
    /// The second secret of a session. It follows from the cookie's, so it need not be kept; a page of another site may
    /// make a browser send the cookie, but cannot read it and so cannot tell this.
    /// </summary>
    public static string Second(string secret) => Mark("second of " + secret);

    /// <summary>Whether two secrets are the same, in a time that does not tell how much of them is.</summary>
    public static bool Same(string one, string other) =>
        CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(one), Encoding.UTF8.GetBytes(other));
}
