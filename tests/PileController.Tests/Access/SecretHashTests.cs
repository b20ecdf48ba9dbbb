using System.Security.Cryptography;
using PileController.Access;

namespace PileController.Tests.Access;

public class SecretHashTests
{
    [Fact]
    public void Of_ASecret_FitsItAndNoOther()
    {
        SecretHash hash = SecretHash.Of("warm chips in january", 1000);

        Assert.True(hash.Fits("warm chips in january"));
        Assert.False(hash.Fits("warm chips in January"));
        Assert.False(hash.Fits(""));
        Assert.Null(hash.Fault());
    }

    [Fact]
    public void Of_TheSameSecretTwice_LooksDifferent()
    {
        SecretHash one = SecretHash.Of("warm chips in january", 1000);
        SecretHash other = SecretHash.Of("warm chips in january", 1000);

        Assert.NotEqual(one.Salt, other.Salt);
        Assert.NotEqual(one.Hash, other.Hash);
    }

    // OWASP, Password Storage Cheat Sheet (December 2022): PBKDF2-HMAC-SHA512 with 210,000 iterations.
    [Fact]
    public void Of_WithoutMore_TakesThePublishedNumberOfIterations() => Assert.Equal(210_000, SecretHash.Of("x").Iterations);

    // Reckoned by the class library's own function from the parts that are kept.
    [Fact]
    public void Of_ASecret_IsPbkdf2WithSha512OfItsParts()
    {
        SecretHash hash = SecretHash.Of("warm chips", 10);

        byte[] expected = Rfc2898DeriveBytes.Pbkdf2("warm chips", Convert.FromBase64String(hash.Salt), 10, HashAlgorithmName.SHA512, 64);
        Assert.Equal(Convert.ToBase64String(expected), hash.Hash);
    }

    [Theory]
    [InlineData("plain", 10, null, null, "scheme")]
    [InlineData(null, 0, null, null, "iterations")]
    [InlineData(null, int.MaxValue, null, null, "iterations")]
    [InlineData(null, 10, "short", null, "salt")]
    [InlineData(null, 10, null, "AAAA", "hash")]
    public void Fault_OfASpoiltOne_NamesThePart(string? scheme, int iterations, string? salt, string? hash, string part)
    {
        SecretHash good = SecretHash.Of("x", 10);
        SecretHash spoilt = new(scheme ?? good.Scheme, iterations, salt ?? good.Salt, hash ?? good.Hash);

        Assert.StartsWith(part, spoilt.Fault());
    }

    [Fact]
    public void Words_Drawn_AreWorthFortyBits()
    {
        string[] words = PassphraseWords.Passphrase().Split(' ');

        Assert.True(words.Length * Math.Log2(PassphraseWords.Stock) >= 40);
        Assert.True(PassphraseRules.Allows(PassphraseWords.Passphrase()));
        Assert.NotEqual(PassphraseWords.Passphrase(), PassphraseWords.Passphrase());
    }

    [Fact]
    public void Code_TypedOtherwise_IsTheSame()
    {
        string code = PassphraseWords.Code();

        Assert.Equal(code, PassphraseWords.Tidied($" {code.ToLowerInvariant().Replace("-", " ", StringComparison.Ordinal)}"));
    }
}
