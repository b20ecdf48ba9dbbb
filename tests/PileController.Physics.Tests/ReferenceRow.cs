using System.Globalization;

namespace PileController.Physics.Tests;

/// <summary>One check value with its source, read from Reference/*.csv.</summary>
public sealed record ReferenceRow(string Id, string Value, string Unit, bool Relative, double Tolerance, string Conditions, string Source)
{
    public double Number => double.Parse(Value, NumberStyles.Float, CultureInfo.InvariantCulture);

    public static IReadOnlyDictionary<string, ReferenceRow> Read(string name)
    {
        string path = Path.Combine(AppContext.BaseDirectory, "Reference", name + ".csv");
        return File.ReadLines(path).Skip(1).Select(Parse).ToDictionary(row => row.Id);
    }

    /// <summary>Holds when the value computed agrees with the row within the row's own tolerance.</summary>
    public void Check(double computed)
    {
        double allowed = Relative ? Tolerance * Math.Abs(Number) : Tolerance;
        Assert.True(
            Math.Abs(computed - Number) <= allowed,
            $"{Id} {Conditions}: {computed:R} {Unit}, published {Value} ± {allowed:R}. {Source}");
    }

    private static ReferenceRow Parse(string line)
    {
        List<string> cells = Cells(line);
        string[] tolerance = cells[3].Split(' ');
        return new ReferenceRow(
            cells[0], cells[1], cells[2], tolerance[0] == "rel", double.Parse(tolerance[1], CultureInfo.InvariantCulture), cells[4], cells[5]);
    }

    private static List<string> Cells(string line)
    {
        var cells = new List<string>();
        int at = 0;
        while (at <= line.Length)
        {
            bool quoted = at < line.Length && line[at] == '"';
            int end = quoted ? line.IndexOf('"', at + 1) : line.IndexOf(',', at);
            end = end < 0 ? line.Length : end;
            cells.Add(quoted ? line[(at + 1)..end] : line[at..end]);
            at = end + (quoted ? 2 : 1);
        }

        return cells;
    }
}
