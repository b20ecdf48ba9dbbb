using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Records.Export;

namespace PileController.Records.Tests.Export;

public sealed class ExportTests
{
    private static readonly SeriesPoint[] Points =
    [
        new(1_737_936_000_000, 11.5, 12.0625, 13, 6), new(1_737_936_060_000, null, null, null, 0),
    ];

    private static readonly DecisionLine Line = new(
        7, 1_737_936_070_500, DecisionKinds.Mode | DecisionKinds.Hand, Mode.Drawing, Curb.Means, 2000.25, 1500, 1500, 880, 57.5,
        null, "Drawing: the heap bears 1,500 W, \"no more\".", "two\r\nlines");

    [Fact]
    public void Csv_Samples_HaveUnitsInTheHeaderAndEmptyGaps()
    {
        using StringWriter to = new();

        CsvExport.Samples(to, "HOUSE", Points);

        Assert.Equal(
            "time [UTC],house least [°C],house mean [°C],house most [°C],count\r\n" +
            "2025-01-27T00:00:00.000Z,11.5,12.0625,13,6\r\n" +
            "2025-01-27T00:01:00.000Z,,,,0\r\n",
            to.ToString());
    }

    [Fact]
    public void Csv_Decisions_QuoteWhatNeedsIt()
    {
        using StringWriter to = new();

        CsvExport.Decisions(to, [Line]);

        string[] parts = to.ToString().Split("\r\n", 2);
        Assert.Equal(
            "sequence,time [UTC],kinds,mode,curb,want [W],means [W],grant [W],water draw [W],active zone [°C],house [°C],why,note",
            parts[0]);
        Assert.Equal(
            "7,2025-01-27T00:01:10.500Z,\"Mode, Hand\",Drawing,Means,2000.25,1500,1500,880,57.5,," +
            "\"Drawing: the heap bears 1,500 W, \"\"no more\"\".\",\"two\r\nlines\"\r\n",
            parts[1]);
    }

    [Theory]
    [InlineData("=HYPERLINK(\"x\") took the pump.", "\"'=HYPERLINK(\"\"x\"\") took the pump.\"")]
    [InlineData("+1 took the pump.", "'+1 took the pump.")]
    [InlineData("-1 took the pump.", "'-1 took the pump.")]
    [InlineData("@a took the pump.", "'@a took the pump.")]
    [InlineData("Robin = 1 took the pump.", "Robin = 1 took the pump.")]
    public void Csv_NoteThatBeginsAsAFormula_StaysText(string note, string field)
    {
        using StringWriter to = new();

        CsvExport.Decisions(to, [Line with { Note = note, WaterWatts = -40 }]);

        Assert.EndsWith($",-40,57.5,,\"Drawing: the heap bears 1,500 W, \"\"no more\"\".\",{field}\r\n", to.ToString());
    }

    [Fact]
    public void JsonLines_Samples_AreOneObjectALine()
    {
        using StringWriter to = new();

        JsonLinesExport.Samples(to, "house", Points);

        JsonElement[] lines = [.. to.ToString().TrimEnd('\n').Split('\n').Select(line => JsonDocument.Parse(line).RootElement)];
        Assert.Equal(2, lines.Length);
        Assert.Equal("°C", lines[0].GetProperty("unit").GetString());
        Assert.Equal(12.0625, lines[0].GetProperty("mean").GetDouble());
        Assert.Equal(JsonValueKind.Null, lines[1].GetProperty("mean").ValueKind);
    }

    [Fact]
    public void JsonLines_Decisions_KeepTextAndUnits()
    {
        using StringWriter to = new();

        JsonLinesExport.Decisions(to, [Line]);

        JsonElement line = JsonDocument.Parse(to.ToString()).RootElement;
        Assert.Equal(Line.Why, line.GetProperty("why").GetString());
        Assert.Equal(2000.25, line.GetProperty("wantWatts").GetDouble());
        Assert.Equal("drawing", line.GetProperty("mode").GetString());
        Assert.Single(to.ToString(), '\n');
    }
}
