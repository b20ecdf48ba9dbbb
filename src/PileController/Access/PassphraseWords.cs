using System.Security.Cryptography;

namespace PileController.Access;

/// <summary>Makes passphrases and codes that can be read out and typed.</summary>
internal static class PassphraseWords
{
    // 6 of 128 words are 42 bits: at the few tries a minute that are let through, that is beyond guessing.
    private const int Words = 6;

    // Without letters and digits that are taken for each other. 8 of 32 are 40 bits.
    private const string Letters = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
    private const int CodeLength = 8;

    private static readonly string[] List =
    (
        "acorn alder amber anvil apple apron arbor aspen badge baker banjo barge basil basin beech berry bison blade bloom board bonus braid "
        + "brass bread brick brook broom cabin camel candle canoe cedar chalk cherry chimney cider cliff clover cobalt copper coral cotton "
        + "cradle crane cricket crown daisy dawn delta denim ditch dove drum eagle elbow elder ember fable falcon fern ferry fiddle flint "
        + "flour forge fossil fox garden garlic ginger glove goose granite grape gravel hammer harbor hazel heron hinge honey island ivory "
        + "jacket jasper juniper kettle ladder lantern lemon linen lizard maple marble meadow melon mint mortar moss needle nettle nutmeg "
        + "oak olive onion orchard otter paddle pebble pepper pillow plum pocket quartz quill rabbit raven ribbon river saddle saffron sage spruce tansy thistle walnut willow yarrow"
    ).Split(' ');

    /// <summary>A passphrase of random words.</summary>
    public static string Passphrase() => string.Join(' ', RandomNumberGenerator.GetItems<string>(List, Words));

    /// <summary>A one-time code in two groups.</summary>
    public static string Code() => RandomNumberGenerator.GetString(Letters, CodeLength).Insert(CodeLength / 2, "-");

    /// <summary>A code as it was made, from what a person typed.</summary>
    public static string Tidied(string typed)
    {
        string bare = string.Concat(typed.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant();
        return bare.Length == CodeLength ? bare.Insert(CodeLength / 2, "-") : bare;
    }

    /// <summary>How many words there are to draw from.</summary>
    internal static int Stock => List.Distinct().Count();
}
