using System.Globalization;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Records;
using PileController.Records.Crash;

// Writes ticks until it is killed. After each acknowledged batch it prints the last safe tick, so that the test that
// killed it knows what must be there.
string folder = args[0];
int seed = int.Parse(args[1], CultureInfo.InvariantCulture);
if (args is [_, _, { } toldTo, { } ticks])
{
    await PacedWriter.RunAsync(folder, seed, toldTo, int.Parse(ticks, CultureInfo.InvariantCulture));
    return;
}

RecordOptions options = new() { DataDirectory = folder, BlockTicks = 60, FileTicks = 5000 };
await using LiteRecord record = LiteRecord.Open(options);
Memory memory = await record.LastMemoryAsync(CancellationToken.None) ?? TrialTicks.Learned;
long told = 0;
foreach (TickEntry tick in TrialTicks.From(memory, seed))
{
    while (!record.TryAppend(tick))
    {
        await Task.Yield();
    }

    if (tick.Decision.Kinds != DecisionKinds.Steady)
    {
        await record.FlushAsync(CancellationToken.None);
    }

    long safe = record.Health.LastSequence;
    if (safe > told)
    {
        told = safe;
        Console.Out.WriteLine(safe.ToString(CultureInfo.InvariantCulture));
    }
}
