using PileController.Control.Decisions;
using PileController.Control.Readings;

namespace PileController.Rigs.Tests;

/// <summary>What every rig owes its caller, whatever is behind it. One derived class a rig.</summary>
public abstract class RigContract
{
    private static readonly Outputs Running = new(1, 1, 1, true);

    /// <summary>Makes the rig with House, Tank and Supply fitted; Floor is not.</summary>
    protected abstract IRig Make();

    /// <summary>Whether every actuator the rig has is off.</summary>
    protected abstract bool AllIsOff { get; }

    /// <summary>Breaks the probe of the tank.</summary>
    protected abstract void BreakTank();

    [Fact]
    public async Task Ctor_BeforeAnyOutputs_IsSafe()
    {
        await using IRig rig = Make();

        Assert.True(AllIsOff);
    }

    [Fact]
    public async Task ApplyAsync_SafeFirst_StaysSafeUntilToldOtherwise()
    {
        await using IRig rig = Make();
        await rig.ApplyAsync(Outputs.Safe, CancellationToken.None);
        await rig.ReadAsync(Ticks.At(0), CancellationToken.None);
        Assert.True(AllIsOff);
        await rig.ApplyAsync(Running, CancellationToken.None);
        await rig.ReadAsync(Ticks.At(1), CancellationToken.None);
        Assert.False(AllIsOff);
    }

    [Fact]
    public async Task DisposeAsync_WhileRunning_IsSafeLast()
    {
        IRig rig = Make();
        await rig.ApplyAsync(Running, CancellationToken.None);
        await rig.DisposeAsync();

        Assert.True(AllIsOff);
    }

    [Fact]
    public async Task DisposeAsync_Twice_IsAllowed()
    {
        IRig rig = Make();
        await rig.DisposeAsync();
        await rig.DisposeAsync();

        Assert.True(AllIsOff);
    }

    [Fact]
    public async Task ReadAsync_AnyTick_HasOneReadingAChannel()
    {
        await using IRig rig = Make();
        for (int tick = 0; tick < 3; tick++)
        {
            RigReadings readings = await rig.ReadAsync(Ticks.At(tick), CancellationToken.None);
            Assert.Equal(ChannelTable.Count, readings.AsSpan().Length);
            Assert.True(readings[Channel.House].IsGood);
            Assert.True(readings[Channel.Tank].IsGood);
            Assert.True(readings[Channel.Supply].IsGood);
        }
    }

    [Fact]
    public async Task ReadAsync_SteadyHouse_ReadsWithinTheProbesTolerance()
    {
        await using IRig rig = Make();
        RigReadings readings = await rig.ReadAsync(Ticks.At(0), CancellationToken.None);

        // SEN-020: DS18B20 accuracy ±0.5 °C, data sheet rev 042208.
        Assert.InRange(readings[Channel.House].ValueOf(Channel.House), HouseCelsius - 0.5, HouseCelsius + 0.5);
    }

    [Fact]
    public async Task ReadAsync_ProbeNotFitted_SaysSo()
    {
        await using IRig rig = Make();

        Assert.Equal(Reading.NotFitted, (await rig.ReadAsync(Ticks.At(0), CancellationToken.None))[Channel.Floor]);
    }

    [Fact]
    public async Task ReadAsync_ProbeFails_IsAQualityAndLeavesTheOthers()
    {
        await using IRig rig = Make();
        await rig.ReadAsync(Ticks.At(0), CancellationToken.None);
        BreakTank();
        RigReadings readings = await rig.ReadAsync(Ticks.At(1), CancellationToken.None);

        Assert.Equal(ReadingQuality.NoAnswer, readings[Channel.Tank].Quality);
        Assert.True(readings[Channel.House].IsGood);
    }

    [Fact]
    public async Task ApplyAsync_NoShare_IsRefusedByName()
    {
        await using IRig rig = Make();

        ArgumentException error = await Assert.ThrowsAsync<ArgumentException>(
            async () => await rig.ApplyAsync(new Outputs(0, 0, 1.5, false), CancellationToken.None));
        Assert.Contains("BlowerDuty", error.Message, StringComparison.Ordinal);
        Assert.True(AllIsOff);
    }

    /// <summary>What the house truly has, °C.</summary>
    protected const double HouseCelsius = 11.5;
}
