using CsCheck;
using PileController.Records.Packing;

namespace PileController.Records.Tests.Packing;

public sealed class IntegerColumnTests
{
    // Steady values, small steps and anything at all, as readings and times are.
    private static readonly Gen<long> Cell = Gen.OneOf(Gen.Long[-3, 3], Gen.Const(7L), Gen.Long, Gen.OneOf(long.MinValue, long.MaxValue));

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Pack_AnyCells_ComeBack(int differences) => Cell.Array[0, 400].Sample(cells => Assert.Equal(cells, RoundTrip(cells, differences)));

    [Fact]
    public void Pack_CellThatNeverChanges_TakesAFewBytes()
    {
        long[] cells = [.. Enumerable.Repeat(913L, 360)];

        Assert.InRange(IntegerColumn.Pack(cells, 1, new byte[IntegerColumn.MostBytes(360)]), 1, 6);
    }

    [Fact]
    public void Pack_EvenlySpacedTimes_TakeAFewBytes()
    {
        long[] cells = [.. Enumerable.Range(0, 360).Select(i => 1_737_936_000_000 + (i * 10_000L))];

        Assert.InRange(IntegerColumn.Pack(cells, 2, new byte[IntegerColumn.MostBytes(360)]), 1, 20);
    }

    [Fact]
    public void Unpack_SectionCutShort_IsRefused()
    {
        byte[] packed = new byte[IntegerColumn.MostBytes(50)];
        int length = IntegerColumn.Pack([.. Enumerable.Range(0, 50).Select(i => i * i * 1000L)], 1, packed);
        for (int cut = 0; cut < length; cut++)
        {
            Assert.Throws<InvalidDataException>(() => IntegerColumn.Unpack(packed.AsSpan(0, cut), 1, new long[50]));
        }
    }

    [Theory]
    [InlineData(49)]
    [InlineData(51)]
    public void Unpack_AnotherCount_IsRefused(int count)
    {
        byte[] packed = new byte[IntegerColumn.MostBytes(50)];
        int length = IntegerColumn.Pack(new long[50], 1, packed);

        Assert.Throws<InvalidDataException>(() => IntegerColumn.Unpack(packed.AsSpan(0, length), 1, new long[count]));
    }

    private static long[] RoundTrip(long[] cells, int differences)
    {
        byte[] packed = new byte[IntegerColumn.MostBytes(cells.Length)];
        int length = IntegerColumn.Pack(cells, differences, packed);
        long[] back = new long[cells.Length];
        IntegerColumn.Unpack(packed.AsSpan(0, length), differences, back);
        return back;
    }
}
