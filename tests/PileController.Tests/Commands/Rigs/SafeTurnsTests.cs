using PileController.Commands.Rigs;
using PileController.Rigs;
using PileController.Settings;

namespace PileController.Tests.Commands.Rigs;

/// <summary>What the service ran with is made safe first, and what the file says now besides, unless that would meet something else.</summary>
public class SafeTurnsTests
{
    private static readonly HardwareSettings Hardware = new()
    {
        GpioChipLabel = "chip",
        PumpPin = 17,
        BlowerPin = 27,
        Valve = new ValveSettings { OpenLine = 5, ShutLine = 6, Safe = ValveSafe.Open },
    };

    [Fact]
    public void Of_NothingLeftRunning_IsTheFilesAlone()
    {
        (IReadOnlyList<SafeTurn> turns, string? news) = SafeTurns.Of(Real(Hardware), null);

        Assert.Equal(Hardware, Assert.Single(turns).Hardware);
        Assert.Null(news);
    }

    [Fact]
    public void Of_NothingReal_IsNothing() =>
        Assert.Empty(SafeTurns.Of(PileSettings.AlderBank, PileSettings.AlderBank).Turns);

    [Fact]
    public void Of_SameWiring_IsOneTurnWithoutAWord()
    {
        PileSettings file = Real(Hardware);
        (IReadOnlyList<SafeTurn> turns, string? news) = SafeTurns.Of(file with { Panel = file.Panel with { DemoSpeed = 7 } }, Real(Hardware));

        Assert.Single(turns);
        Assert.Null(news);
    }

    [Fact]
    public void Of_AnotherWiring_IsTheOldOneFirstAndTheValveOnce()
    {
        (IReadOnlyList<SafeTurn> turns, string? news) = SafeTurns.Of(Real(Hardware with { PumpPin = 22 }), Real(Hardware));

        Assert.Equal([17, 22], turns.Select(turn => turn.Hardware.PumpPin));
        Assert.Equal([true, false], turns.Select(turn => turn.Hardware.Valve.IsFitted));
        Assert.Contains("first, then those of the file", news, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_AnotherValve_RunsBoth()
    {
        HardwareSettings moved = Hardware with { Valve = Hardware.Valve with { OpenLine = 12, ShutLine = 13 } };

        Assert.All(SafeTurns.Of(Real(moved), Real(Hardware)).Turns, turn => Assert.True(turn.Hardware.Valve.IsFitted));
    }

    [Fact]
    public void Of_AFileMadeSimulated_IsWhatTheServiceRanWith() =>
        Assert.Equal(Hardware, Assert.Single(SafeTurns.Of(PileSettings.AlderBank, Real(Hardware)).Turns).Hardware);

    [Fact]
    public void Of_AFileWhoseOutputsMeetSomethingElse_IsWhatTheServiceRanWithAndSaysWhy()
    {
        (IReadOnlyList<SafeTurn> turns, string? news) = SafeTurns.Of(Real(Hardware with { ActiveLow = true }), Real(Hardware));

        Assert.Equal(Hardware, Assert.Single(turns).Hardware);
        Assert.Contains("rig.hardware.activeLow is true, and the rig has it false: only the outputs the service ran with", news, StringComparison.Ordinal);
    }

    private static PileSettings Real(HardwareSettings hardware) =>
        PileSettings.AlderBank with { Rig = PileSettings.AlderBank.Rig with { Simulated = false, Hardware = hardware } };
}
