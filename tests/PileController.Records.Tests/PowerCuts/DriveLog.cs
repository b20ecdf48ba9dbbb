using System.Globalization;
using System.Text;

namespace PileController.Records.Tests.PowerCuts;

/// <summary>Everything that came to a drive, in order: writes, flushes, and what the writer said in between.</summary>
/// <threadsafety>Safe from any thread.</threadsafety>
internal sealed class DriveLog
{
    private readonly Lock _gate = new();
    private readonly List<DriveEvent> _events = [];

    /// <summary>All of it so far.</summary>
    public IReadOnlyList<DriveEvent> Events
    {
        get
        {
            lock (_gate)
            {
                return [.. _events];
            }
        }
    }

    public void Wrote(long at, ReadOnlySpan<byte> bytes) => Add(new DriveEvent(DriveEventKind.Write, at, bytes.ToArray()));

    public void Flushed() => Add(new DriveEvent(DriveEventKind.Flush, 0, []));

    /// <summary>A line <c>T n</c> or <c>S n</c>; see the paced writer.</summary>
    public void Said(ReadOnlySpan<byte> words)
    {
        string line = Encoding.ASCII.GetString(words).TrimEnd();
        Add(new DriveEvent(
            line[0] == 'T' ? DriveEventKind.Taken : DriveEventKind.Safe, long.Parse(line[2..], CultureInfo.InvariantCulture), []));
    }

    private void Add(DriveEvent happened)
    {
        lock (_gate)
        {
            _events.Add(happened);
        }
    }
}

internal enum DriveEventKind
{
    Write,
    Flush,
    Taken,
    Safe,
}

/// <summary>One of them.</summary>
/// <param name="Kind">What.</param>
/// <param name="Number">Where a write begins, or the number of the tick.</param>
/// <param name="Bytes">What was written.</param>
internal readonly record struct DriveEvent(DriveEventKind Kind, long Number, byte[] Bytes);
