using System.Text;
using CsCheck;
using PileController.Records.Packing;

namespace PileController.Records.Tests.Packing;

public sealed class TextDifferenceTests
{
    private static readonly Gen<string> Piece = Gen.String[Gen.Char["ab\"1.é"], 0, 4];

    [Fact]
    public void Apply_ToTheTextItWasMadeWith_MakesTheOther() =>
        Gen.Select(Piece, Piece, Gen.Bool).Array[1, 12].Sample(pieces =>
        {
            byte[] from = Joined(pieces.Select(piece => piece.Item1));
            byte[] to = Joined(pieces.Select(piece => piece.Item3 ? piece.Item1 : piece.Item2));

            Assert.Equal(to, TextDifference.Apply(from, TextDifference.Of(from, to)!));
        }, iter: 2000);

    [Fact]
    public void Of_SameText_IsAByte() => Assert.Equal([0], TextDifference.Of("a,b,c"u8, "a,b,c"u8));

    [Theory]
    [InlineData("a,b", "a,b,c")]
    [InlineData("a,b,c", "a,b")]
    public void Of_OtherNumberOfPieces_IsNone(string from, string to) =>
        Assert.Null(TextDifference.Of(Encoding.UTF8.GetBytes(from), Encoding.UTF8.GetBytes(to)));

    [Theory]
    [InlineData("a,b")]
    [InlineData("a,b,")]
    public void Apply_ToATextItWasNotMadeWith_Throws(string other)
    {
        byte[] difference = TextDifference.Of("a,b,cde"u8, "a,b,cdf"u8)!;

        Assert.Throws<InvalidDataException>(() => TextDifference.Apply(Encoding.UTF8.GetBytes(other), difference));
    }

    [Fact]
    public void Apply_CutAnywhere_Throws()
    {
        byte[] from = "{\"a\":1,\"b\":2,\"c\":3}"u8.ToArray();
        byte[] difference = TextDifference.Of(from, "{\"a\":1,\"b\":4,\"c\":5}"u8)!;
        for (int length = 0; length < difference.Length; length++)
        {
            Assert.Throws<InvalidDataException>(() => TextDifference.Apply(from, difference.AsSpan(0, length)));
        }
    }

    private static byte[] Joined(IEnumerable<string> pieces) => Encoding.UTF8.GetBytes(string.Join(',', pieces));
}
