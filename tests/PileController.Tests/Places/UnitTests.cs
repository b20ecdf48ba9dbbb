using PileController.Tests.Architecture;

namespace PileController.Tests.Places;

/// <summary>What the service must not lose when somebody edits its unit.</summary>
public sealed class UnitTests
{
    private static readonly string[] Lines = Repository.Read("systemd/pile-controller.service").Split('\n');

    [Theory]
    [InlineData("Type=notify")]
    [InlineData("NotifyAccess=exec")]
    [InlineData("WatchdogSec=25")]
    [InlineData("WatchdogSignal=SIGKILL")]
    [InlineData("TimeoutStopSec=20")]
    [InlineData("Restart=always")]
    [InlineData("RestartSec=2")]
    [InlineData("StartLimitIntervalSec=0")]
    [InlineData("UMask=0077")]
    [InlineData("User=pile")]
    [InlineData("StateDirectory=pile-controller")]
    [InlineData("StateDirectoryMode=0700")]
    [InlineData("ExecStopPost=/opt/pile-controller/PileController rig safe --settings /etc/pile-controller/pile.json --data /var/lib/pile-controller")]
    [InlineData("NoNewPrivileges=yes")]
    [InlineData("CapabilityBoundingSet=")]
    [InlineData("ProtectSystem=strict")]
    [InlineData("DevicePolicy=closed")]
    [InlineData("DeviceAllow=char-gpiochip rw")]
    [InlineData("DeviceAllow=char-i2c rw")]
    [InlineData("ReadWritePaths=-/sys/devices")]
    [InlineData("SystemCallFilter=@system-service")]
    public void Unit_Has(string line) => Assert.Contains(line, Lines);

    [Fact]
    public void Stop_FindsTheDataOfTheService()
    {
        string serve = Lines.Single(line => line.StartsWith("ExecStart=", StringComparison.Ordinal));
        string safe = Lines.Single(line => line.StartsWith("ExecStopPost=", StringComparison.Ordinal));

        Assert.Equal(serve[serve.IndexOf("--settings", StringComparison.Ordinal)..], safe[safe.IndexOf("--settings", StringComparison.Ordinal)..]);
    }

    [Theory]
    [InlineData("MemoryDenyWriteExecute")] // .NET would not start
    [InlineData("PrivateDevices")] // no GPIO
    [InlineData("ProcSubset")] // .NET could not tell how much memory there is
    [InlineData("PrivateNetwork")] // no page
    public void Unit_HasNot(string key) => Assert.DoesNotContain(Lines, line => line.StartsWith($"{key}=", StringComparison.Ordinal));

    [Fact]
    public void Watcher_MayReachTheSameLinesAsTheService()
    {
        string[] watcher = Repository.Read("systemd/pile-controller-watch.service").Split('\n');
        IEnumerable<string> access = Lines.Where(line =>
            line.StartsWith("Device", StringComparison.Ordinal) || line.StartsWith("ReadWritePaths=", StringComparison.Ordinal)
            || line.StartsWith("User=", StringComparison.Ordinal)
            || line.StartsWith("SupplementaryGroups=", StringComparison.Ordinal));

        Assert.All(access, line => Assert.Contains(line, watcher));
    }
}
