using System.Text.Json;
using PileController.Settings;
using PileController.Tests.Settings;

namespace PileController.Tests.Commands;

public sealed class CheckTests : IDisposable
{
    private readonly string _file = Path.Combine(Path.GetTempPath(), $"pile-{Guid.NewGuid():N}.json");

    public void Dispose() => File.Delete(_file);

    [Fact]
    public async Task Check_OfTheShippedFile_FindsNothing()
    {
        CommandLine run = await CommandLine.RunAsync("check", DemoFile.Path);
        Assert.Equal(0, run.ExitCode);
        Assert.EndsWith("no fault found.", run.Output.Trim(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_OfAGoodFileForMachines_PrintsNoFaults()
    {
        CommandLine run = await CommandLine.RunAsync("check", DemoFile.Path, "--json");
        Assert.Equal(0, run.ExitCode);
        Assert.Equal("{\"faults\":[],\"warnings\":[]}", run.Output.Trim());
    }

    [Fact]
    public async Task Check_OfABadFile_ListsEveryFaultInASentence()
    {
        await File.WriteAllTextAsync(_file, "{\n \"heap\": { \"radius\": 2 },\n \"site\": { \"latitude\": 95 }\n}");
        CommandLine run = await CommandLine.RunAsync("check", _file);
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("line 2: heap.radius is 2; allowed: a length needs its unit", run.Output, StringComparison.Ordinal);
        Assert.Contains("line 3: site.latitude is 95; allowed: -90 to 90 degrees north", run.Output, StringComparison.Ordinal);
        Assert.Contains("2 faults.", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_OfABadFileForMachines_PrintsPathGivenAllowedAndLine()
    {
        await File.WriteAllTextAsync(_file, "{ \"heap\": { \"radius\": \"60 m\" } }");
        CommandLine run = await CommandLine.RunAsync("check", _file, "--json");
        Assert.Equal(1, run.ExitCode);
        using JsonDocument answer = JsonDocument.Parse(run.Output);
        JsonElement fault = Assert.Single(answer.RootElement.GetProperty("faults").EnumerateArray());
        Assert.Equal("path,given,allowed,line", string.Join(',', fault.EnumerateObject().Select(p => p.Name)));
        Assert.Equal("heap.radius", fault.GetProperty("path").GetString());
        Assert.Equal("\"60 m\"", fault.GetProperty("given").GetString());
        Assert.Equal("0.5 m to 6 m", fault.GetProperty("allowed").GetString());
        Assert.Equal(1, fault.GetProperty("line").GetInt32());
    }

    // With a tick of 10 s the default of 15 s takes two readings without flow, after the tick the stop falls into.
    [Theory]
    [InlineData("10 s", "60 s", "interlocks.noFlowTime is 60 s: a running pump whose water stops is then off after up to 80 s, later than the 30 s within which it should be; less than 20 s keeps to them.")]
    [InlineData("10 s", "20 s", "interlocks.noFlowTime is 20 s: a running pump whose water stops is then off after up to 40 s")]
    [InlineData("5 s", "25 s", "interlocks.noFlowTime is 25 s: a running pump whose water stops is then off after up to 35 s, later than the 30 s within which it should be; less than 25 s keeps to them.")]
    [InlineData("15 s", "15 s", "control.tick is 15 s: a running pump whose water stops is then off after up to 45 s, later than the 30 s within which it should be; 10 s or less keeps to them.")]
    public async Task Check_StoppedFlowAnsweredLate_WarnsAndPasses(string tick, string time, string warning)
    {
        await File.WriteAllTextAsync(_file, $"{{ \"control\": {{ \"tick\": \"{tick}\" }},\n \"interlocks\": {{ \"noFlowTime\": \"{time}\" }} }}");
        CommandLine run = await CommandLine.RunAsync("check", _file);

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("Warning: line ", run.Output, StringComparison.Ordinal);
        Assert.Contains(warning, run.Output, StringComparison.Ordinal);
        Assert.EndsWith("no fault found.", run.Output.Trim(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("10 s", "15 s")]
    [InlineData("10 s", "19 s")]
    [InlineData("5 s", "24 s")]
    public async Task Check_StoppedFlowAnsweredInTime_WarnsOfNothing(string tick, string time)
    {
        await File.WriteAllTextAsync(_file, $"{{ \"control\": {{ \"tick\": \"{tick}\" }}, \"interlocks\": {{ \"noFlowTime\": \"{time}\" }} }}");
        CommandLine run = await CommandLine.RunAsync("check", _file);

        Assert.Equal((0, $"{_file}: no fault found."), (run.ExitCode, run.Output.Trim()));
    }

    [Theory]
    [InlineData("house", true)]
    [InlineData("outside", false)]
    public async Task Check_RealRigThatSeesNoFrost_Warns(string third, bool warns)
    {
        await File.WriteAllTextAsync(_file, $$"""
            {
              "rig": {
                "kind": "hardware",
                "probes": [
                  { "channel": "flow", "from": "pulses", "line": 24 },
                  { "channel": "heapTurns", "radius": "1 m", "height": "1 m", "address": "28-0000000000a1" },
                  { "channel": "{{(warns ? "tank" : "house")}}", "address": "28-0000000000a2" },
                  { "channel": "{{third}}", "address": "28-0000000000a3" },
                ],
                "hardware": { "gpioChip": "board-gpio", "pumpPin": 17, "blowerPin": 27, "standingWater": "drainsBack" },
              },
              "control": { "pump": { "drive": "onOff" } },
            }
            """);
        CommandLine run = await CommandLine.RunAsync("check", _file);

        Assert.Equal(0, run.ExitCode);
        Assert.Equal(warns, run.Output.Contains("Warning: line 4: rig.probes is without a probe for supply, return or outside:", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Check_WarningForMachines_StandsBesideTheFaults()
    {
        await File.WriteAllTextAsync(_file, "{ \"interlocks\": { \"noFlowTime\": \"60 s\" } }");
        CommandLine run = await CommandLine.RunAsync("check", _file, "--json");

        Assert.Equal(0, run.ExitCode);
        using JsonDocument answer = JsonDocument.Parse(run.Output);
        Assert.Empty(answer.RootElement.GetProperty("faults").EnumerateArray());
        JsonElement warning = Assert.Single(answer.RootElement.GetProperty("warnings").EnumerateArray());
        Assert.Equal("path,given,says,line", string.Join(',', warning.EnumerateObject().Select(p => p.Name)));
        Assert.Equal("interlocks.noFlowTime", warning.GetProperty("path").GetString());
    }

    [Theory]
    [InlineData("check", "--defaults")]
    [InlineData("check", "--defaults", "--json")]
    public async Task Check_AskedForDefaults_PrintsAFileItAccepts(params string[] args)
    {
        CommandLine run = await CommandLine.RunAsync(args);
        Assert.Equal(0, run.ExitCode);
        SettingsResult read = SettingsFile.Parse(run.Output);
        Assert.Empty(read.Faults);
        Assert.Equal(PileSettings.AlderBank.Fingerprint(), read.Settings.Fingerprint());
    }
}
