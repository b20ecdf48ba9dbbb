using PileController.Control;
using PileController.Panel.Nights;
using PileController.Records.Accounts;

namespace PileController.Tests.Panel.Nights;

public class MinimumThenTests
{
    private const double NowC = 6.1;

    [Theory]
    [InlineData(50, 5)]
    [InlineData(100, 5)]
    [InlineData(195, 5)]
    [InlineData(200, 7)]
    [InlineData(300, NowC)]
    [InlineData(400, NowC)]
    public void Of_BlocksMadeWithOtherSettings_IsWhatWasInForce(long utc, double celsius)
    {
        BlockAccount[] blocks = [Block("five", 100), Block("seven", 200), Block("nobodyKnows", 300)];

        Func<long, double> minimum = MinimumThen.Of(blocks, hash => hash switch { "five" => With(5), "seven" => With(7), _ => null }, NowC);

        Assert.Equal(celsius, minimum(utc));
    }

    [Fact]
    public void Of_NoBlocks_IsThatOfNow() => Assert.Equal(NowC, MinimumThen.Of([], _ => With(5), NowC)(100));

    private static ControlSettings With(double minimumC) => new() { HouseMinimumC = minimumC };

    private static BlockAccount Block(string hash, long first) =>
        new(hash, first, first + 90, first, first + 45, first + 90, null, default, default, false, false);
}
