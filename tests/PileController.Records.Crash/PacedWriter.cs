using System.Globalization;
using System.Text;
using PileController.Control;
using PileController.Control.Decisions;

namespace PileController.Records.Crash;

/// <summary>
/// Writes ticks as a service does whose disk keeps up: a tick is handed over only once no more than a minute of steady
/// ticks before it is unsafe, and a decision is waited for. Each step is told to a file before the next is taken.
/// </summary>
public static class PacedWriter
{
    /// <summary>Small blocks, days and files, so that a thousand ticks see all of a record's life.</summary>
    public static RecordOptions OptionsFor(string folder) => new()
    {
        DataDirectory = folder,
        BlockTicks = 60,
        DayTicks = 120,
        FileTicks = 240,
        KeepTicks = 480,
        KeepMinuteTicks = 720,
    };

    /// <summary>Writes.</summary>
    /// <param name="folder">The record's folder.</param>
    /// <param name="seed">Seed of the ticks.</param>
    /// <param name="told">A file to which <c>T n</c> goes before tick n is handed over, and <c>S n</c> once it is safe.</param>
    /// <param name="ticks">How many.</param>
    public static async Task RunAsync(string folder, int seed, string told, int ticks)
    {
        await using FileStream words = new(told, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
        RecordOptions options = OptionsFor(folder);
        await using LiteRecord record = LiteRecord.Open(options);
        Memory memory = await record.LastMemoryAsync(CancellationToken.None) ?? TrialTicks.Learned;
        long safe = 0;
        foreach (TickEntry tick in TrialTicks.From(memory, seed).Take(ticks))
        {
            long sequence = tick.Decision.Sequence;
            Say(words, 'T', sequence);
            if (!record.TryAppend(tick))
            {
                throw new InvalidOperationException($"Tick {sequence} was dropped.");
            }

            long due = tick.Decision.Kinds == DecisionKinds.Steady ? sequence - options.SyncTicks + 1 : sequence;
            while (record.Health.LastSequence < due)
            {
                await Task.Yield();
            }

            if (record.Health.LastSequence > safe)
            {
                safe = record.Health.LastSequence;
                Say(words, 'S', safe);
            }
        }
    }

    private static void Say(FileStream words, char what, long sequence) =>
        words.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{what} {sequence}\n")));
}
