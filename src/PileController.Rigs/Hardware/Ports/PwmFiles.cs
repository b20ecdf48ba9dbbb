namespace PileController.Rigs.Hardware.Ports;

/// <summary>How the kernel's PWM files are reached; tests put a tree of their own behind it.</summary>
/// <param name="Root">The folder of the chips.</param>
/// <param name="Read">Reads a file's text.</param>
/// <param name="Write">Writes a file's text.</param>
/// <param name="Pause">Waits a little, while files appear.</param>
internal sealed record PwmFiles(string Root, Func<string, string> Read, Action<string, string> Write, Action Pause)
{
    /// <summary>The kernel's own.</summary>
    public static PwmFiles Kernel { get; } =
        new("/sys/class/pwm", File.ReadAllText, File.WriteAllText, () => Thread.Sleep(50));
}
