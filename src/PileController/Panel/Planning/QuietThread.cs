using System.Runtime.InteropServices;

namespace PileController.Panel.Planning;

/// <summary>Long sums on a thread of their own that the ticks always go before.</summary>
internal static class QuietThread
{
    private const int Process = 0;
    private const int Caller = 0;
    private const int Humblest = 19;

    /// <summary>Starts the work. The thread ends with it, and does not keep the program alive.</summary>
    public static void Start(string name, Action work) =>
        new Thread(() =>
        {
            StepBack();
            work();
        })
        {
            Name = name,
            IsBackground = true,
            Priority = ThreadPriority.Lowest,
        }.Start();

    // Linux does not heed the priority of a managed thread; its own call takes the calling thread alone when the
    // number is 0. Should it be refused, the sums merely run as any other thread.
    private static void StepBack()
    {
        if (OperatingSystem.IsLinux())
        {
            _ = SetPriority(Process, Caller, Humblest);
        }
    }

    [DllImport("libc", EntryPoint = "setpriority", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetPriority(int which, int who, int priority);
}
