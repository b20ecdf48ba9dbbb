using Parquet;
using Parquet.Schema;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Records.Export;

namespace PileController.Records.Tests.Export;

public sealed class ParquetExportTests
{
    private const long Begins = 1_737_936_000_123;

    [Fact]
    public async Task Samples_OverSeveralRowGroups_AreThoseOfTheCsv()
    {
        SeriesPoint[] points = [.. Enumerable.Range(0, 70_000).Select(i => i % 1000 == 7
            ? new SeriesPoint(Begins + (i * 10_000L), null, null, null, 0)
            : new SeriesPoint(Begins + (i * 10_000L), i / 16.0, (i / 16.0) + 0.0625, i / 8.0, 6))];
        using StringWriter csv = new();
        CsvExport.Samples(csv, "house", points);
        using MemoryStream file = new();

        await ParquetExport.SamplesAsync(file, "HOUSE", points, CancellationToken.None);

        await using ParquetReader reader = await ParquetReader.CreateAsync(new MemoryStream(file.ToArray()));
        DataField[] fields = reader.Schema.GetDataFields();
        List<string> lines = [string.Join(',', fields.Select(field => field.Name))];
        foreach (ParquetRowGroupReader group in reader.RowGroups)
        {
            DateTime[] times = new DateTime[group.RowCount];
            double?[][] numbers = [new double?[group.RowCount], new double?[group.RowCount], new double?[group.RowCount]];
            int[] counts = new int[group.RowCount];
            await group.ReadAsync<DateTime>(fields[0], times);
            for (int column = 0; column < numbers.Length; column++)
            {
                await group.ReadAsync<double>(fields[1 + column], numbers[column].AsMemory());
            }

            await group.ReadAsync<int>(fields[4], counts);
            for (int row = 0; row < times.Length; row++)
            {
                long utc = new DateTimeOffset(times[row], TimeSpan.Zero).ToUnixTimeMilliseconds();
                lines.Add(string.Join(',', [Csv.Moment(utc), .. numbers.Select(column => Csv.Number(column[row])), $"{counts[row]}"]));
            }
        }

        Assert.Equal(2, reader.RowGroupCount);
        Assert.Equal(csv.ToString().TrimEnd().Split("\r\n"), lines);
    }

    [Fact]
    public async Task Decisions_KeepTextsAndWhatIsNotThere()
    {
        DecisionLine[] lines =
        [
            new(7, Begins, DecisionKinds.Mode | DecisionKinds.Hand, Mode.Drawing, Curb.Means, 2000.25, 1500, 1400, 880, 57.5, null, "Drawing, \"no more\".", "two\r\nlines"),
            new(8, Begins + 10_000, DecisionKinds.Mode, Mode.Standby, Curb.Floor, 0, 1, 2, 3, 4, 5.5, "Standing by.", null),
        ];
        using MemoryStream file = new();

        await ParquetExport.DecisionsAsync(file, lines, CancellationToken.None);

        await using ParquetReader reader = await ParquetReader.CreateAsync(new MemoryStream(file.ToArray()));
        DataField[] fields = reader.Schema.GetDataFields();
        ParquetRowGroupReader group = Assert.Single(reader.RowGroups);
        Assert.Equal(
            "sequence,time [UTC],kinds,mode,curb,want [W],means [W],grant [W],water draw [W],active zone [°C],house [°C],why,note",
            string.Join(',', fields.Select(field => field.Name)));
        long[] sequences = new long[2];
        double?[] house = new double?[2];
        await group.ReadAsync<long>(fields[0], sequences);
        await group.ReadAsync<double>(fields[10], house.AsMemory());
        Assert.Equal([7, 8], sequences);
        Assert.Equal([null, 5.5], house);
        Assert.Equal("Mode, Hand|Mode", await TextsAsync(group, fields[2]));
        Assert.Equal("Drawing|Standby", await TextsAsync(group, fields[3]));
        Assert.Equal($"{lines[0].Why}|{lines[1].Why}", await TextsAsync(group, fields[11]));
        Assert.Equal($"{lines[0].Note}|none", await TextsAsync(group, fields[12]));
        for (int at = 5; at < 10; at++)
        {
            double[] numbers = new double[2];
            await group.ReadAsync<double>(fields[at], numbers);
            Assert.Equal(lines.Select(line => new[] { line.WantWatts, line.MeansWatts, line.GrantWatts, line.WaterWatts, line.ActiveZoneCelsius }[at - 5]), numbers);
        }
    }

    private static async Task<string> TextsAsync(ParquetRowGroupReader group, DataField field)
    {
        string?[] texts = new string?[group.RowCount];
        await group.ReadAsync(field, texts.AsMemory());
        return string.Join('|', texts.Select(text => text ?? "none"));
    }
}
