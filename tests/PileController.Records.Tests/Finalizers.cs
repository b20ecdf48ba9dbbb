namespace PileController.Records.Tests;

/// <summary>Lets everything that was left behind be finalized. A finalizer that throws ends the process, and the run with it.</summary>
internal static class Finalizers
{
    // What a slot of the thread still holds comes free only after the slot's own finalizer.
    private const int Rounds = 3;

    public static void Run()
    {
        for (int round = 0; round < Rounds; round++)
        {
            GC.Collect();
            GC.WaitForPendingFinalizers();
        }
    }
}
