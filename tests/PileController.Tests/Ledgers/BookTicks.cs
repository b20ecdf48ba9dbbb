using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records;
using PileController.Settings;
using PileController.Tests.Support;

namespace PileController.Tests.Ledgers;

/// <summary>Ticks of a minute for a real record, with totals that grow by the same amount each tick.</summary>
internal sealed class BookTicks
{
    public const int TickMilliseconds = 60_000;
    private readonly CannedControl _control = new();

    public static PileSettings Settings { get; } = PileSettings.AlderBank with
    {
        Control = PileSettings.AlderBank.Control with { TickSeconds = 60 },
        Site = PileSettings.AlderBank.Site with { TimeZone = "America/New_York" },
        Rig = PileSettings.AlderBank.Rig with { Simulated = false },
    };

    public Memory Memory { get; private set; } = Memory.Fresh;

    /// <summary>Lives so many ticks from a wall time on and hands them to a record.</summary>
    public void Live(IPileRecord record, DateTimeOffset from, int ticks)
    {
        for (int i = 0; i < ticks; i++)
        {
            long utc = from.ToUnixTimeMilliseconds() + (i * (long)TickMilliseconds);
            Instant at = new(utc, (Memory.Sequence + 1) * TickMilliseconds, -300);
            RigReadings readings = MadeUp.Readings(at);
            (Decision decision, Memory after) = _control.Step(Settings.Control, Memory, readings, [], at);
            Totals totals = Blocks.Of(decision.Sequence);
            (decision, after) = (decision with { Totals = totals }, after with { Totals = totals });
            if (!record.TryAppend(new TickEntry(readings, [], Memory, decision, after)))
            {
                record.FlushAsync(CancellationToken.None).GetAwaiter().GetResult();
                Assert.True(record.TryAppend(new TickEntry(readings, [], Memory, decision, after)));
            }

            Memory = after;
        }
    }

    /// <summary>The program ends and starts again.</summary>
    public void Restart() => Memory = Memory.AfterRestart();
}
