using System.Runtime.Versioning;

namespace PileController.Tests.Places;

/// <summary>The second pair of eyes (systemd/watch).</summary>
[UnsupportedOSPlatform("windows")]
public sealed class WatchTests : IDisposable
{
    private const string Down = "ActiveState=failed MainPID=0 WatchdogUSec=30s WatchdogTimestampMonotonic=7";
    private const string Safe = "rig safe --settings /etc/pile-controller/pile.json --data /var/lib/pile-controller";

    private readonly WatchTrial _trial = new();

    public void Dispose() => _trial.Dispose();

    [Fact]
    public async Task Controller_SilentForAMinute_IsKilled()
    {
        string said = await _trial.LookAsync([.. Enumerable.Repeat(_trial.Running(heard: 7), 7)]);

        Assert.Contains($"killing process {_trial.Controller.Id}", said, StringComparison.Ordinal);
        await _trial.Controller.WaitForExitAsync();
        Assert.Equal(128 + 9, _trial.Controller.ExitCode);
    }

    [Fact]
    public async Task Controller_HeardJustBeforeTheMinuteIsOver_IsLeftAlone()
    {
        string said = await _trial.LookAsync(
            [.. Enumerable.Repeat(_trial.Running(heard: 7), 6), .. Enumerable.Repeat(_trial.Running(heard: 8), 6)]);

        Assert.Equal("", said);
        Assert.False(_trial.Controller.HasExited);
        Assert.Empty(_trial.Calls);
    }

    [Fact]
    public async Task Controller_WithoutAWatchdog_IsLeftAloneAndThatIsSaidOnce()
    {
        string said = await _trial.LookAsync([.. Enumerable.Repeat(_trial.Running(heard: 7, "infinity"), 9)]);

        Assert.False(_trial.Controller.HasExited);
        Assert.Equal("WatchdogSec of pile-controller.service is off: nothing tells whether it is well.\n", said);
    }

    [Fact]
    public async Task Controller_ThatWentDown_HasItsOutputsMadeSafeOnce()
    {
        await _trial.LookAsync([_trial.Running(heard: 7), Down, Down, Down]);

        Assert.Equal([Safe], _trial.Calls);
    }

    [Fact]
    public async Task Controller_DownTwice_IsMadeSafeTwice()
    {
        await _trial.LookAsync([Down, _trial.Running(heard: 7), Down]);

        Assert.Equal([Safe, Safe], _trial.Calls);
    }

    [Fact]
    public async Task Outputs_ThatCannotBeMadeSafe_AreTriedAgainAtTheNextLook()
    {
        string said = await _trial.LookAsync([Down, Down, Down, Down], failingCalls: 2);

        Assert.Equal(3, _trial.Calls.Length);
        Assert.Equal(2, said.Split('\n').Count(line => line.StartsWith("The outputs could not be made safe", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Controller_StartingAgain_IsLeftToSystemd()
    {
        string starting = _trial.Running(heard: 7).Replace("=active", "=activating", StringComparison.Ordinal);

        await _trial.LookAsync([.. Enumerable.Repeat(starting, 12)]);

        Assert.False(_trial.Controller.HasExited);
        Assert.Empty(_trial.Calls);
    }

    [Fact]
    public async Task Manager_ThatDoesNotAnswer_IsAskedAgain()
    {
        string said = await _trial.LookAsync(["", "", Down]);

        Assert.Contains("systemd does not answer", said, StringComparison.Ordinal);
        Assert.Equal([Safe], _trial.Calls);
    }
}
