namespace PileController.Rigs.Hardware;

/// <summary>Locks that timers come to.</summary>
internal static class Gates
{
    /// <summary>
    /// Does a deed behind the lock, unless somebody is in there. Timers call again while a call before still waits for a bus
    /// that hangs: nobody queues up behind it.
    /// </summary>
    /// <param name="gate">The lock.</param>
    /// <param name="deed">What is done while it is held.</param>
    /// <returns>Whether it was done.</returns>
    public static bool UnlessBusy(this Lock gate, Action deed)
    {
        if (!gate.TryEnter())
        {
            return false;
        }

        try
        {
            deed();
            return true;
        }
        finally
        {
            gate.Exit();
        }
    }
}
