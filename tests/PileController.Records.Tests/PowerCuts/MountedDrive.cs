using System.Diagnostics;

namespace PileController.Records.Tests.PowerCuts;

/// <summary>An ext4 file system on a loop device over a file, until disposed.</summary>
internal sealed class MountedDrive : IDisposable
{
    private const int Megabytes = 32;
    private readonly string _folder;

    private MountedDrive(string folder) => _folder = folder;

    /// <summary>Why no such thing can be had here, or null.</summary>
    public static string? Missing()
    {
        if (!OperatingSystem.IsLinux() || Environment.UserName != "root")
        {
            return "Power cuts on a real file system need root on Linux: run the tests as root.";
        }

        string[] devices = ["/dev/fuse", "/dev/loop-control"];
        if (devices.FirstOrDefault(device => !File.Exists(device)) is { } missing)
        {
            return $"Power cuts on a real file system need {missing}, which is not there: load the modules fuse and loop.";
        }

        string[] programs = ["/usr/sbin/mkfs.ext4", "/usr/bin/mount", "/usr/bin/umount"];
        return programs.FirstOrDefault(program => !File.Exists(program)) is { } absent
            ? $"Power cuts on a real file system need {absent}, which is not there: install e2fsprogs and mount."
            : null;
    }

    /// <summary>A fresh file system, as bytes.</summary>
    public static byte[] Fresh(string folder)
    {
        string file = Path.Combine(folder, "fresh");
        using (FileStream stream = File.Create(file))
        {
            stream.SetLength(Megabytes * 1024 * 1024);
        }

        Run("/usr/sbin/mkfs.ext4", "-q", "-F", "-J", "size=4", "-E", "lazy_itable_init=0,lazy_journal_init=0", file);
        byte[] bytes = File.ReadAllBytes(file);
        File.Delete(file);
        return bytes;
    }

    /// <summary>Mounts; what the file system has to recover it recovers.</summary>
    public static MountedDrive Mount(string file, string folder)
    {
        Run("/usr/bin/mount", "-t", "ext4", "-o", "loop", file, folder);
        return new MountedDrive(folder);
    }

    /// <inheritdoc/>
    public void Dispose() => Run("/usr/bin/umount", _folder);

    private static void Run(string program, params string[] given)
    {
        ProcessStartInfo start = new(program, given) { RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        string error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new IOException($"{program} {string.Join(' ', given)}: {error.Trim()}");
        }
    }
}
