namespace PileController.Rigs.Hardware.OneWire;

/// <summary>
/// Lets all probes of a wire convert at once, where the kernel offers it: writing "trigger" blocks for one conversion,
/// and the next read of each probe's file then only fetches the result (Linux, Documentation/w1/slaves/w1_therm.rst).
/// </summary>
/// <param name="wire">The wire's folder.</param>
/// <param name="writeText">Writes a file's text, or throws.</param>
internal sealed class BulkConversion(string wire, Action<string, string> writeText)
{
    private readonly string _file = Path.Combine(wire, "therm_bulk_read");

    /// <summary>Starts and awaits the conversion; where that cannot be, each probe converts when it is read.</summary>
    public void Run()
    {
        try
        {
            // Asked for each time: the kernel's module may be loaded later. Nothing is made where nothing is.
            if (File.Exists(_file))
            {
                writeText(_file, "trigger\n");
            }
        }
        catch (Exception)
        {
            // Not allowed, or the wire does not answer: the probes say so themselves. Nothing may pass, because the
            // bus's thread would take the process with it.
        }
    }
}
