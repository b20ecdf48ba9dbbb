using System.Diagnostics;
using System.Runtime.Versioning;
using PileController.Tests.Architecture;

namespace PileController.Tests.Places;

/// <summary>Runs the watcher's script with a service manager, a pause and a program that are made up.</summary>
[UnsupportedOSPlatform("windows")]
internal sealed class WatchTrial : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-watch-").FullName;

    /// <summary>A process that stands in for the controller.</summary>
    public Process Controller { get; } = Process.Start("/bin/sleep", "300");

    /// <summary>What the program was called with, a line a call.</summary>
    public string[] Calls => File.Exists(Of("calls")) ? File.ReadAllLines(Of("calls")) : [];

    /// <summary>Lets the script look once at each of the states; an empty one is a manager that does not answer.</summary>
    /// <returns>What it said.</returns>
    public async Task<string> LookAsync(IReadOnlyList<string> states, int failingCalls = 0)
    {
        for (int i = 0; i < states.Count; i++)
        {
            File.WriteAllText(Of($"look{i + 1}"), states[i].Replace(' ', '\n'));
        }

        Script("systemctl", $"""n=$(cat {Of("n")} 2>/dev/null || echo 0); n=$((n + 1)); echo $n >{Of("n")}; [ -s {Of("look")}$n ] && cat {Of("look")}$n""");
        Script("sleep", "exit 0");
        Script("program", $"""echo "$*" >>{Of("calls")}; [ $(wc -l <{Of("calls")}) -gt {failingCalls} ]""");
        File.WriteAllText(
            Of("watch"),
            Repository.Read("systemd/watch").Replace("/opt/pile-controller/PileController", Of("program"), StringComparison.Ordinal));
        ProcessStartInfo start = new("/bin/sh") { RedirectStandardError = true };
        start.ArgumentList.Add(Of("watch"));
        start.ArgumentList.Add($"{states.Count}");
        start.Environment["PATH"] = $"{_folder}:{Environment.GetEnvironmentVariable("PATH")}";
        using Process run = Process.Start(start)!;
        string said = await run.StandardError.ReadToEndAsync();
        await run.WaitForExitAsync();
        Assert.Equal(0, run.ExitCode);
        return said;
    }

    /// <summary>What systemd tells of a controller that runs and was last heard at a moment.</summary>
    public string Running(int heard, string watchdog = "30s") =>
        $"ActiveState=active MainPID={Controller.Id} WatchdogUSec={watchdog} WatchdogTimestampMonotonic={heard}";

    public void Dispose()
    {
        Controller.Kill();
        Controller.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private string Of(string file) => Path.Combine(_folder, file);

    private void Script(string name, string body)
    {
        File.WriteAllText(Of(name), $"#!/bin/sh\n{body}\n");
        File.SetUnixFileMode(Of(name), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }
}
