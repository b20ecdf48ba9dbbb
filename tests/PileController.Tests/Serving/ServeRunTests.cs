using System.Device.Gpio;
using PileController.Rigs.Hardware;
using PileController.Rigs.Tests.Hardware;
using PileController.Serving;
using PileController.Settings;
using PileController.Tests.Commands;
using PileController.Watch;

namespace PileController.Tests.Serving;

/// <summary>A whole run with a real rig's lines, behind which there is no chip.</summary>
public sealed class ServeRunTests : IDisposable
{
    private const int Pump = 17;

    private const string Text = """
        {
          "rig": {
            "kind": "hardware",
            "probes": [
              { "channel": "flow", "from": "pulses", "line": 24 },
              { "channel": "heapTurns", "radius": "1 m", "height": "1 m", "address": "28-0000000000a1" },
              { "channel": "house", "address": "28-0000000000a2" },
              { "channel": "outside", "address": "28-0000000000a3" },
            ],
            "hardware": { "gpioChip": "no such chip", "oneWireRoot": "/no/such/folder", "pumpPin": 17, "blowerPin": 27, "standingWater": "drainsBack" },
          },
          "control": { "pump": { "drive": "onOff" } },
          "interlocks": { "noFlowTime": "60 s" },
        }
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("pile-serve-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task RunAsync_StoppedWithAllOff_EndsInOrder()
    {
        await RunAsync(_ => { });

        Assert.False(StartBook.Of(_folder).LeftRunning());
        Assert.DoesNotContain("switched off", await RunAsync(_ => { }), StringComparison.Ordinal);
    }

    [Fact]
    public async Task RunAsync_AnOutputCannotBeSwitchedOff_IsNoOrderlyEndNamesItAndTellsItAtTheNextStart()
    {
        RigFaultException fault = await Assert.ThrowsAsync<RigFaultException>(() => RunAsync(driver => driver.BrokenPins.Add(Pump)));

        Assert.Contains("The pump's line 17 cannot be switched off", fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("blower", fault.Message, StringComparison.Ordinal);
        Assert.True(StartBook.Of(_folder).LeftRunning());

        Assert.Contains("At its last end the program could not switch everything off: The pump's line 17", await RunAsync(_ => { }), StringComparison.Ordinal);
        Assert.False(StartBook.Of(_folder).LeftRunning());
    }

    [Fact]
    public async Task RunAsync_AnOutputThatObeysAtLast_IsAnOrderlyEnd()
    {
        string said = await RunAsync(driver => driver.BrokenPins.Add(Pump), (driver, line) =>
        {
            if (line.Contains("line 17", StringComparison.Ordinal))
            {
                driver.BrokenPins.Clear();
            }
        });

        Assert.Contains("line 17", said, StringComparison.Ordinal);
        Assert.False(StartBook.Of(_folder).LeftRunning());
    }

    [Fact]
    public async Task RunAsync_SettingsThatCheckWarnsOf_SaysTheSameOnce()
    {
        string file = Path.Combine(_folder, "pile.json");
        await File.WriteAllTextAsync(file, Text);
        CommandLine check = await CommandLine.RunAsync("check", file);

        Assert.Equal(Warnings(check.Output), Warnings(await RunAsync(_ => { })));
        Assert.Contains("interlocks.noFlowTime is 60 s", Assert.Single(Warnings(check.Output)), StringComparison.Ordinal);
    }

    private static string[] Warnings(string said) => [.. said.Split(Environment.NewLine).Where(line => line.StartsWith("Warning: ", StringComparison.Ordinal))];

    // Runs until the page is up, does something to the lines, and stops.
    private async Task<string> RunAsync(Action<FakeGpioDriver> before, Action<FakeGpioDriver, string>? hears = null)
    {
        FakeGpioDriver driver = new();
        using CancellationTokenSource stop = new();
        using Ear said = new(line =>
        {
            if (line.StartsWith("Stop with", StringComparison.Ordinal))
            {
                before(driver);
                stop.Cancel();
            }
            else
            {
                hears?.Invoke(driver, line);
            }
        });
        ServeOptions options = new(SettingsFile.Parse(Text).Settings, Text, _folder, "http://127.0.0.1:0", 1, null)
        {
            OpenHardware = (settings, report) => new GpioRig(new GpioController(driver), settings.Rig, Derived.Motion(settings), TimeProvider.System, report),
        };
        await ServeRun.RunAsync(options, said, stop.Token);
        return said.ToString();
    }

    private sealed class Ear(Action<string> heard) : StringWriter
    {
        private readonly Lock _gate = new();

        public override void WriteLine(string? value)
        {
            lock (_gate)
            {
                base.WriteLine(value);
            }

            heard(value ?? "");
        }
    }
}
