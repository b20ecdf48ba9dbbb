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
        Assert.Equal("{\"faults\":[]}", run.Output.Trim());
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
