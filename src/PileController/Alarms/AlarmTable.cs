using PileController.Alarms.Rows;

namespace PileController.Alarms;

/// <summary>The alarms of a place, causes before what follows from them.</summary>
public sealed class AlarmTable
{
    private readonly Dictionary<string, int> _byKey = new(StringComparer.Ordinal);
    private readonly int[][] _causes;
    private readonly int[][] _others;

    /// <summary>Makes a table of rows.</summary>
    /// <param name="rows">The rows.</param>
    /// <exception cref="ArgumentException">Two rows of one key.</exception>
    public AlarmTable(IReadOnlyList<AlarmRow> rows)
    {
        Rows = rows;
        for (int i = 0; i < rows.Count; i++)
        {
            if (!_byKey.TryAdd(rows[i].Key, i))
            {
                throw new ArgumentException($"Two rows have the key \"{rows[i].Key}\"; each needs its own.", nameof(rows));
            }
        }

        // A cause that is not watched for at this place holds nothing back.
        _causes = [.. rows.Select(row => row.FollowsFrom.Where(_byKey.ContainsKey).Select(key => _byKey[key]).ToArray())];
        _others = [.. rows.Select(row => Enumerable.Range(0, rows.Count).Where(i => rows[i] != row && rows[i].Group == row.Group).ToArray())];
    }

    /// <summary>The rows.</summary>
    public IReadOnlyList<AlarmRow> Rows { get; }

    /// <summary>The alarms of a place.</summary>
    public static AlarmTable Of(AlarmPlace place) => new(
    [
        .. ServiceRows.Of(place), .. BusRows.Of(place), .. WaterRows.Of(place), .. HeapRows.Of(place), .. HouseRows.Of(place),
        .. PowerRows.Of(place), .. ProbeRows.Of(place), .. DoubtRows.Of(place),
    ]);

    /// <summary>Finds a row; -1 when there is none of that key.</summary>
    public int IndexOf(string key) => _byKey.TryGetValue(key, out int index) ? index : -1;

    /// <summary>Rows that a row follows from.</summary>
    internal ReadOnlySpan<int> CausesOf(int row) => _causes[row];

    /// <summary>The other rows of a row's group.</summary>
    internal IEnumerable<int> OthersOfGroup(int row) => _others[row];
}
