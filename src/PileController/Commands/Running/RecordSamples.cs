using System.CommandLine;
using System.Diagnostics.CodeAnalysis;
using PileController.Commands.Shell;
using PileController.Records;
using PileController.Records.Checking;
using PileController.Records.Export;
using PileController.Units;

namespace PileController.Commands.Running;

/// <summary>record samples: one channel over time.</summary>
internal static class RecordSamples
{
    private static readonly Option<string> Data = RecordAsk.Data();
    private static readonly Option<long> From = RecordAsk.Moment("--from", "First moment; UTC unless it says otherwise; the beginning when left out.", 0);
    private static readonly Option<long> To = RecordAsk.Moment("--to", "First moment after; UTC unless it says otherwise; the end when left out.", long.MaxValue);
    private static readonly Option<string> Channel = Ask.Of<string>("--channel", "Which channel or figure.", ReadSeries).Needed();
    private static readonly Option<double> Step = Ask.Quantity("--step", "Width of a bucket; every tick when left out.", "s", Dimension.Time, 0, 31_622_400).Unless(0);
    private static readonly Option<bool> Json = Ask.Json();
    private static readonly Option<bool> Csv = RecordAsk.Csv();
    private static readonly Option<string?> Parquet = ParquetAnswer.File();

    public static Command Create()
    {
        PileCommand command = new(
            "samples", "One channel or figure over time, oldest first; gaps are told as gaps.",
            "PileController record samples --data DIR --channel heapCore --step \"1 h\"")
        {
            Data, From, To, Channel, Step, Json, Csv, Parquet,
        };
        RecordAsk.CheckSpanAndForm(command, From, To, Json, Csv, Parquet);
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        string series = parse.GetValue(Channel)!;
        return parse.GetValue(Parquet) is { } path
            ? ParquetAnswer.Write(parse, Data, path, Points, (to, points) => ParquetExport.SamplesAsync(to, series, points, CancellationToken.None))
            : RecordAsk.With(parse, Data, Points, (points, output) => Tell(parse, output, series, points));

        IReadOnlyList<SeriesPoint> Points(RecordReader record, Action<string> tellDamage) => record.Samples(
            series, parse.GetValue(From), parse.GetValue(To), (long)(parse.GetValue(Step) * 1000), tellDamage);
    }

    private static void Tell(ParseResult parse, TextWriter output, string series, IReadOnlyList<SeriesPoint> points)
    {
        if (parse.GetValue(Json))
        {
            RecordAsk.WriteArray(output, to => JsonLinesExport.Samples(to, series, points));
        }
        else if (parse.GetValue(Csv))
        {
            CsvExport.Samples(output, series, points);
        }
        else
        {
            string unit = RecordSeries.Find(series).Unit;
            foreach (SeriesPoint point in points)
            {
                string value = point.Mean is { } mean ? $"{mean,9:F2} {unit}  ({point.Least:F2} to {point.Most:F2})" : "      gap";
                output.WriteLine($"{DateTimeOffset.FromUnixTimeMilliseconds(point.UtcMilliseconds):yyyy-MM-dd HH:mm:ss}Z  {value}");
            }
        }
    }

    private static bool ReadSeries(string text, out string value, [NotNullWhen(false)] out string? allowed)
    {
        RecordSeries? known = RecordSeries.All.FirstOrDefault(s => string.Equals(s.Name, text, StringComparison.OrdinalIgnoreCase));
        value = known?.Name ?? text;
        allowed = known is null ? string.Join(", ", RecordSeries.All.Select(s => s.Name)) : null;
        return known is not null;
    }
}
