using PileController.Control.Decisions;
using PileController.Control.Interlocks;

namespace PileController.Control.Tests.Decisions;

public sealed class HandRuleTests
{
    private const long Now = 1_000_000;
    private const long Day = 86_400_000;
    private static readonly TakeByHand Pump = new(Actuator.Pump, 0.5, 600_000, "Ada");

    [Fact]
    public void Apply_Take_HoldsUntilItsEnd()
    {
        HandRule.Result result = Apply([], Pump);

        Assert.Equal([new HandHold(Actuator.Pump, 0.5, Now + 600_000, "Ada")], result.Hands);
        Assert.Equal("Ada took the pump by hand at 50 % for 10 min.", result.Note);
        Assert.Equal(DecisionKinds.Hand, result.Kinds);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(-5, 1)]
    [InlineData(Day + 1, Day)]
    [InlineData(long.MaxValue, Day)]
    public void Apply_AnyLength_EndsWithinADay(long asked, long held) =>
        Assert.Equal(Now + held, Apply([], Pump with { Milliseconds = asked }).Hands[0].UntilMonotonicMilliseconds);

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(7, 1)]
    public void Apply_ValueBeyondItsRange_IsTakenToTheEndOfIt(double asked, double held) =>
        Assert.Equal(held, Apply([], Pump with { Value = asked }).Hands[0].Value);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Apply_ValueThatIsNoNumber_IsRefusedWithTheReason(double asked)
    {
        HandRule.Result result = Apply([], Pump with { Value = asked });

        Assert.Empty(result.Hands);
        Assert.Contains("allowed is 0 to 1", result.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void Apply_TakenAgain_ReplacesTheHold()
    {
        HandHold[] first = Apply([], Pump).Hands;
        HandHold[] second = Apply(first, Pump with { Value = 0.9, Who = "Ben" }).Hands;

        Assert.Equal([new HandHold(Actuator.Pump, 0.9, Now + 600_000, "Ben")], second);
    }

    [Theory]
    [InlineData(599_999, 1)]
    [InlineData(600_000, 0)]
    public void Apply_TimeGoesBy_EndsByItself(long later, int left)
    {
        HandRule.Result result = HandRule.Apply(Apply([], Pump).Hands, Memory.Fresh.Interlocks, false, [], Now + later);

        Assert.Equal(left, result.Hands.Length);
        Assert.Equal(left == 0 ? "By hand ended by itself: pump." : null, result.Note);
    }

    [Fact]
    public void Apply_SeveralEndAtOnce_AllEnd()
    {
        HandHold[] hands = Apply([], Pump, Pump with { Actuator = Actuator.Blower }).Hands;

        Assert.Equal(2, hands.Length);
        Assert.Empty(HandRule.Apply(hands, Memory.Fresh.Interlocks, false, [], Now + Day).Hands);
    }

    [Fact]
    public void Apply_Release_GivesBackOneOrAll()
    {
        HandHold[] hands = Apply([], Pump, Pump with { Actuator = Actuator.Blower }).Hands;

        Assert.Equal(Actuator.Blower, Assert.Single(Apply(hands, new ReleaseHand(Actuator.Pump)).Hands).Actuator);
        Assert.Empty(Apply(hands, new ReleaseHand(null)).Hands);
    }

    [Fact]
    public void Apply_ClearAGoneCause_ForgetsTheTrip()
    {
        HandRule.Result result = HandRule.Apply([], Tripped(-1, false), false, [new ClearTrip("LEAK")], Now);

        Assert.Equal(InterlockMemory.Fresh, result.Interlocks[0]);
        Assert.Equal("Cleared: leak.", result.Note);
    }

    [Theory]
    [InlineData(900_000, true)]
    [InlineData(990_000, false)]
    public void Apply_ClearWhileTheCauseStandsOrIsComingBack_IsRefused(long since, bool acting)
    {
        InterlockMemory[] tripped = Tripped(since, acting);
        HandRule.Result result = HandRule.Apply([], tripped, false, [new ClearTrip("leak")], Now);

        Assert.True(result.Interlocks[0].Latched);
        Assert.StartsWith("Not cleared:", result.Note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("level")]
    [InlineData("no such interlock")]
    public void Apply_ClearWhatIsNotTripped_SaysSo(string id) =>
        Assert.Equal($"Nothing to clear: {id} is not tripped.", Apply([], new ClearTrip(id)).Note);

    [Fact]
    public void Apply_NothingAsked_HandsOnTheSameArrays()
    {
        InterlockMemory[] interlocks = Memory.Fresh.Interlocks;
        HandHold[] hands = Apply([], Pump).Hands;
        HandRule.Result result = HandRule.Apply(hands, interlocks, true, [], Now);

        Assert.Same(hands, result.Hands);
        Assert.Same(interlocks, result.Interlocks);
        Assert.True(result.Servicing);
        Assert.Equal(DecisionKinds.Steady, result.Kinds);
    }

    private static HandRule.Result Apply(HandHold[] hands, params Command[] commands) =>
        HandRule.Apply(hands, Memory.Fresh.Interlocks, false, commands, Now);

    private static InterlockMemory[] Tripped(long since, bool acting)
    {
        InterlockMemory[] memory = [.. Memory.Fresh.Interlocks];
        memory[0] = new InterlockMemory(since, acting, true);
        return memory;
    }
}
