using System.Globalization;

namespace PileController.Physics.Sky.Weather;

/// <summary>A comma-separated file with a header line, its columns found by name.</summary>
internal sealed class WeatherTable
{
    private readonly Dictionary<string, int> _columns = new(StringComparer.OrdinalIgnoreCase);
    private readonly WeatherFaults _faults;

    private WeatherTable(string[] header, List<Row> rows, WeatherFaults faults)
    {
        _faults = faults;
        Rows = rows;
        for (int i = 0; i < header.Length; i++)
        {
            if (!_columns.TryAdd(header[i], i))
            {
                faults.File($"the column {header[i]} stands there twice.");
            }
        }
    }

    public IReadOnlyList<Row> Rows { get; }

    public static WeatherTable Parse(IReadOnlyList<string> lines, WeatherFaults faults)
    {
        string[] header = Cells(lines.Count > 0 ? lines[0].TrimStart('\uFEFF') : "");
        var rows = new List<Row>();
        for (int i = 1; i < lines.Count; i++)
        {
            if (lines[i].Length > 0)
            {
                rows.Add(new Row(i + 1, Cells(lines[i])));
            }
        }

        if (rows.Count == 0)
        {
            faults.File("no rows; allowed is one row or more after the line of columns.");
        }

        return new WeatherTable(header, rows, faults);
    }

    public bool Has(string column) => _columns.ContainsKey(column);

    public void Need(params string[] columns)
    {
        foreach (string column in columns.Where(column => !Has(column)))
        {
            _faults.File($"no column {column}; there are {string.Join(", ", _columns.Keys.DefaultIfEmpty("none"))}; allowed is a first line that names {column} too.");
        }

        _faults.ThrowIfAny();
    }

    public string Text(Row row, string column) => _columns[column] < row.Cells.Length ? row.Cells[_columns[column]] : "";

    /// <summary>The number in a cell: NaN where the cell is empty or the column is not there; a fault where it is no number or out of range.</summary>
    public double Number(Row row, string column, double lowest, double highest, string unit)
    {
        string text = Has(column) ? Text(row, column) : "";
        if (text.Length == 0)
        {
            return double.NaN;
        }

        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && value >= lowest && value <= highest)
        {
            return value;
        }

        _faults.Cell(row.Line, column, text, $"{lowest} to {highest} {unit}");
        return double.NaN;
    }

    public static string[] Cells(string line) => [.. line.Split(',').Select(cell => cell.Trim().Trim('"'))];

    internal readonly record struct Row(int Line, string[] Cells);
}
