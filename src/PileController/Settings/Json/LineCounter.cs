namespace PileController.Settings.Json;

/// <summary>Tells lines from positions in a text.</summary>
internal sealed class LineCounter
{
    private readonly List<long> _starts = [0];

    /// <summary>Counts the lines of <paramref name="text"/> once.</summary>
    public LineCounter(ReadOnlySpan<byte> text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == (byte)'\n')
            {
                _starts.Add(i + 1);
            }
        }
    }

    /// <summary>The line of a byte, from 1.</summary>
    public int LineAt(long position)
    {
        int found = _starts.BinarySearch(position);
        return found >= 0 ? found + 1 : ~found;
    }

    /// <summary>The place of a byte in its line, from 1.</summary>
    public long ColumnAt(long position) => position - _starts[LineAt(position) - 1] + 1;
}
