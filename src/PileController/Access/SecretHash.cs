using System.Security.Cryptography;

namespace PileController.Access;

/// <summary>A secret that people can remember, as it is kept: slow to try, salted, and saying how it was made.</summary>
/// <param name="Scheme">How it was made.</param>
/// <param name="Iterations">How often.</param>
/// <param name="Salt">Base64; never the same twice.</param>
/// <param name="Hash">Base64.</param>
internal sealed record SecretHash(string Scheme, int Iterations, string Salt, string Hash)
{
    /// <summary>OWASP, Password Storage Cheat Sheet, PBKDF2-HMAC-SHA512: 210,000 (its figure of December 2022).</summary>
    public const int UsualIterations = 210_000;

    // Far above what is asked for today; more would hold up every sign-in for minutes.
    private const int MostIterations = 10_000_000;
    private const int SaltBytes = 16;
    private const int HashBytes = 64;
    private const string Pbkdf2Sha512 = "pbkdf2-sha512";

    /// <summary>Hashes a secret with a new salt. Takes a good part of a second on a small board.</summary>
    public static SecretHash Of(string secret, int iterations = UsualIterations)
    {
        byte[] salt = RandomNumberGenerator.GetBytes(SaltBytes);
        return new SecretHash(Pbkdf2Sha512, iterations, Convert.ToBase64String(salt), Convert.ToBase64String(Derive(secret, salt, iterations)));
    }

    /// <summary>Whether a secret is this one. Takes as long whether it is or not.</summary>
    public bool Fits(string secret) => CryptographicOperations.FixedTimeEquals(
        Derive(secret, Convert.FromBase64String(Salt), Iterations), Convert.FromBase64String(Hash));

    /// <summary>What is wrong with it as it was read from a file, or null.</summary>
    public string? Fault() =>
        Scheme != Pbkdf2Sha512 ? $"scheme is \"{Scheme}\"; allowed: {Pbkdf2Sha512}"
        : Iterations is < 1 or > MostIterations ? $"iterations is {Iterations}; allowed: 1 to {MostIterations}"
        : !IsBase64(Salt, SaltBytes) ? $"salt is not {SaltBytes} bytes in base64"
        : !IsBase64(Hash, HashBytes) ? $"hash is not {HashBytes} bytes in base64"
        : null;

    private static byte[] Derive(string secret, byte[] salt, int iterations) =>
        Rfc2898DeriveBytes.Pbkdf2(secret, salt, iterations, HashAlgorithmName.SHA512, HashBytes);

    private static bool IsBase64(string text, int bytes) =>
        Convert.TryFromBase64String(text, new byte[bytes + 3], out int written) && written == bytes;
}
