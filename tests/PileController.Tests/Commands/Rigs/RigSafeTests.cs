namespace PileController.Tests.Commands.Rigs;

public sealed class RigSafeTests : IDisposable
{
    private readonly string _file = Path.Combine(Path.GetTempPath(), $"pile-{Guid.NewGuid():N}.json");

    public void Dispose() => File.Delete(_file);

    [Fact]
    public async Task Safe_SimulatedRig_HasNothingToDo()
    {
        await File.WriteAllTextAsync(_file, "{}");
        CommandLine run = await CommandLine.RunAsync("rig", "safe", "--settings", _file);

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("nothing to switch off", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Safe_ChipsThatAreNotThere_TellsEachAndWhatToDo()
    {
        await File.WriteAllTextAsync(_file, """
            {
              "rig": {
                "kind": "hardware",
                "probes": [{ "channel": "flow" }, { "channel": "heapTurns", "radius": "1 m", "height": "1 m", "address": "28-0000000000a1" }, { "channel": "house", "address": "28-0000000000a2" }],
                "hardware": {
                  "gpioChip": "no such chip", "pwmChip": "no.such.pwm", "standingWater": "drainsBack",
                  "pump": { "drive": "pwm", "channel": 0 }, "blowerPin": 27
                }
              }
            }
            """);
        CommandLine run = await CommandLine.RunAsync("rig", "safe", "--settings", _file);

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("no.such.pwm", run.Error, StringComparison.Ordinal);
        Assert.Contains("no such chip", run.Error, StringComparison.Ordinal);
        Assert.Contains("cut their supply by hand", run.Output, StringComparison.Ordinal);
    }
}
